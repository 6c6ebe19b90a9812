package org.bayhold.catalog;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.net.URI;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.CatalogWrites.CorrectionMade;
import org.bayhold.catalog.CatalogWrites.MoveMade;
import org.bayhold.catalog.CatalogWrites.NewNote;
import org.bayhold.catalog.CatalogWrites.NewSpec;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The catalogue over HTTP. */
@RestController
@RequestMapping("/api/v1")
class CatalogController {
    private final CatalogWrites writes;
    private final Catalog catalog;
    private final PartSpecs specs;
    private final Clock clock;

    CatalogController(CatalogWrites writes, Catalog catalog, PartSpecs specs, Clock clock) {
        this.writes = writes;
        this.catalog = catalog;
        this.specs = specs;
        this.clock = clock;
    }

    /** A part spec to add. */
    record PartSpecRequest(
            @NotNull Category category,
            @NotBlank @Size(max = 100) String maker,
            @NotBlank @Size(max = 100) String partNumber,
            @NotBlank @Size(max = 40) String specRevision,
            @Nullable Map<String, Object> attributes,
            @Nullable @Size(max = 500) String complianceNote,
            @Nullable UUID supersedes) {
        /** @throws Refusal INVALID where an attribute is none of the category's, or its value is not allowed */
        NewSpec spec() {
            Map<String, Object> given = attributes == null ? Map.of() : attributes;
            PartAttributes.of(category).holdAll("attributes", given);
            return new NewSpec(
                    category,
                    maker.strip(),
                    partNumber.strip(),
                    specRevision.strip(),
                    given,
                    complianceNote,
                    supersedes);
        }
    }

    /** What the attributes should have been, and why. */
    record CorrectionRequest(
            @NotNull Map<String, Object> attributes,
            @NotBlank @Size(max = 2000) String reason) {
        /** @throws Refusal INVALID where an attribute is none of the part's category, or its value is not allowed */
        Map<String, Object> attributesFor(PartSpec part) {
            PartAttributes.of(part.category()).holdAll("attributes", attributes);
            return attributes;
        }
    }

    /** What was learnt of a part on some cars. */
    record BenefitNoteRequest(
            BenefitNote.@NotNull Effect effect,
            @Nullable @Size(max = 100) String engine,
            @Nullable @Size(max = 64) String ecuHardware,
            @NotBlank @Size(max = 500) String note) {
        NewNote asked() {
            return new NewNote(effect, Text.strip(engine), Text.strip(ecuHardware), note.strip());
        }
    }

    /** A category to move to NO_EFFECT, or back from it. */
    record MoveRequest(
            @NotNull Boolean noEffect,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A category with its group now. */
    record CategoryView(Category category, EffectGroup group) {}

    @Needs(Act.ADD_PART_SPEC)
    @PostMapping("/part-specs")
    ResponseEntity<PartSpec> add(Call call, @Valid @RequestBody PartSpecRequest request) {
        PartSpec added = writes.add(call.request(), request.spec()).value();
        return ResponseEntity.created(URI.create("/api/v1/part-specs/" + added.id()))
                .body(added);
    }

    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/part-specs/{id}/corrections")
    ResponseEntity<PartSpec> correct(Call call, @PathVariable UUID id, @Valid @RequestBody CorrectionRequest request) {
        CorrectionMade made = writes.correct(call.request(), id, request.attributesFor(get(id)), request.reason())
                .value();
        return ResponseEntity.created(URI.create("/api/v1/part-specs/" + id)).body(made.partSpec());
    }

    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/part-specs/{id}/benefit-notes")
    ResponseEntity<BenefitNote> note(Call call, @PathVariable UUID id, @Valid @RequestBody BenefitNoteRequest request) {
        get(id);
        BenefitNote said = writes.note(call.request(), id, request.asked()).value();
        return ResponseEntity.created(URI.create("/api/v1/part-specs/" + id + "/benefit-notes"))
                .body(said);
    }

    /** What counts of it now. */
    @Needs(Act.READ)
    @GetMapping("/part-specs/{id}/benefit-notes")
    Page<BenefitNote> notes(@PathVariable UUID id) {
        get(id);
        return Page.whole(catalog.benefitNotes(List.of(id)));
    }

    @Needs(Act.READ)
    @GetMapping("/part-specs/{id}")
    PartSpec get(@PathVariable UUID id) {
        return catalog.spec(id).orElseThrow(() -> Refusal.notFound("part-spec.not-found"));
    }

    @Needs(Act.READ)
    @GetMapping("/part-specs")
    Page<PartSpec> find(
            @RequestParam @Nullable Category category,
            @RequestParam @Nullable String q,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit) {
        int size = Page.size(limit);
        List<PartSpec> found =
                catalog.withCorrections(specs.find(category, Page.like(q), Page.after(after), Limit.of(size + 1)));
        return Page.of(found, size, PartSpec::id);
    }

    @Needs(Act.READ)
    @GetMapping("/categories")
    List<CategoryView> categories() {
        EffectGroups groups = catalog.effectGroups();
        var now = clock.instant();
        return Arrays.stream(Category.values())
                .map(category -> new CategoryView(category, groups.of(category, now, now)))
                .toList();
    }

    @Needs(Act.SET_POLICY)
    @PostMapping("/categories/{category}/moves")
    ResponseEntity<MoveMade> move(Call call, @PathVariable Category category, @Valid @RequestBody MoveRequest request) {
        return ResponseEntity.created(URI.create("/api/v1/categories"))
                .body(writes.move(call.request(), category, request.noEffect(), request.reason())
                        .value());
    }
}
