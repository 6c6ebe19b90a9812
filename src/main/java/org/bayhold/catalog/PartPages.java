package org.bayhold.catalog;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.catalog.CatalogController.BenefitNoteRequest;
import org.bayhold.catalog.CatalogController.CorrectionRequest;
import org.bayhold.catalog.CatalogController.PartSpecRequest;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.json.JsonMapper;

/** <i>Parts</i>: the catalogue, a part to add, one part with its corrections. */
@Controller
class PartPages {
    private static final int LISTED = 200;
    private static final String NEW = "catalog/part-new";
    private static final String ONE = "catalog/part";

    private final Catalog catalog;
    private final CatalogWrites writes;
    private final JsonMapper json;

    PartPages(Catalog catalog, CatalogWrites writes, JsonMapper json) {
        this.catalog = catalog;
        this.writes = writes;
        this.json = json;
    }

    @Needs(Act.READ)
    @GetMapping("/parts")
    ModelAndView list(Form form) {
        Category category = form.choice("category", Category.class);
        return form.show("catalog/parts")
                .addObject("categories", Category.values())
                .addObject("parts", catalog.find(category, form.value("named"), LISTED));
    }

    @Needs(Act.ADD_PART_SPEC)
    @GetMapping("/parts/new")
    ModelAndView form(Form form) {
        return choices(form.with("specRevision", "A").show(NEW));
    }

    @Needs(Act.ADD_PART_SPEC)
    @PostMapping("/parts/new")
    ModelAndView add(Call call, Form form) {
        ModelAndView page = form.submit(NEW, () -> {
            Category category = form.choice("category", Category.class);
            if (category == null && form.error("category") == null) {
                form.refused(Refusal.invalid("category", "form.choice"));
            }
            PartSpecRequest request = new PartSpecRequest(
                    category == null ? Category.COSMETIC : category,
                    form.required("maker"),
                    form.required("partNumber"),
                    form.required("specRevision"),
                    AttributeText.read(form, "attributes", json),
                    form.text("complianceNote"),
                    superseded(form, category));
            form.check(request);
            try {
                PartSpec added = writes.add(call.request(), request.spec()).value();
                return form.done("/parts/" + added.id(), "said.part-added");
            } catch (Refusal refusal) {
                throw refusal.renamed(PartPages::ofPage);
            }
        });
        return !Form.leadsOn(page) ? choices(page) : page;
    }

    @Needs(Act.READ)
    @GetMapping("/parts/{id}")
    ModelAndView one(Caller caller, @PathVariable UUID id, Form form) {
        PartSpec part = part(id);
        return form.with("attributes", AttributeText.write(part.attributes()))
                .show(ONE)
                .addAllObjects(about(part, caller));
    }

    /** That it brings nothing, or harms, on some cars. */
    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/parts/{id}/benefit-notes")
    ModelAndView note(Call call, @PathVariable UUID id, Form form) {
        PartSpec part = part(id);
        ModelAndView page = form.submit(ONE, () -> {
            BenefitNote.Effect effect = form.choice("effect", BenefitNote.Effect.class);
            if (effect == null && form.error("effect") == null) {
                form.refused(Refusal.invalid("effect", "form.choice"));
            }
            BenefitNoteRequest request = new BenefitNoteRequest(
                    effect == null ? BenefitNote.Effect.NO_OBJECTION : effect,
                    form.text("engine"),
                    form.text("ecuHardware"),
                    form.required("note"));
            form.check(request);
            writes.note(call.request(), id, request.asked());
            return form.done("/parts/" + id, "said.benefit-noted");
        });
        form.with("attributes", AttributeText.write(part.attributes()));
        return Form.leadsOn(page) ? page : page.addAllObjects(about(part, call.caller()));
    }

    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/parts/{id}/correct")
    ModelAndView correct(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            Map<String, Object> attributes = AttributeText.read(form, "attributes", json);
            String reason = form.required("reason");
            CorrectionRequest request = new CorrectionRequest(attributes, reason);
            form.check(request);
            try {
                PartSpec corrected = writes.correct(call.request(), id, request.attributesFor(part(id)), reason)
                        .value()
                        .partSpec();
                return form.done("/parts/" + corrected.id(), "said.part-corrected");
            } catch (Refusal refusal) {
                throw refusal.renamed(PartPages::ofPage);
            }
        });
        return Form.leadsOn(page) ? page : page.addAllObjects(about(part(id), call.caller()));
    }

    private Map<String, Object> about(PartSpec part, Caller caller) {
        return Map.of(
                "part", part,
                "attributes", PartAttributes.of(part.category()).show(part.attributes(), caller.units()),
                "takes", takes(part.category()),
                "notes", catalog.benefitNotes(List.of(part.id())),
                "relatives", relatives(part),
                "effects", BenefitNote.Effect.values());
    }

    /** What a part supersedes, and what superseded it. */
    private Map<String, List<PartSpec>> relatives(PartSpec part) {
        List<PartSpec> before = Stream.ofNullable(part.supersedes())
                .flatMap(id -> catalog.spec(id).stream())
                .toList();
        return Map.of("before", before, "after", catalog.superseding(part.id()));
    }

    /** A part typed as people name it. */
    private @Nullable UUID superseded(Form form, @Nullable Category category) {
        String typed = form.text("supersedes");
        if (typed == null) {
            return null;
        }
        List<PartSpec> named = catalog.named(category, typed);
        if (named.size() != 1) {
            form.refused(Refusal.invalid("supersedes", "parts.supersedes.unclear"));
            return null;
        }
        return named.get(0).id();
    }

    private static ModelAndView choices(ModelAndView page) {
        Map<Category, List<Attribute>> takes = new EnumMap<>(Category.class);
        for (Category category : Category.values()) {
            takes.put(category, takes(category));
        }
        return page.addObject("categories", Category.values()).addObject("takes", takes);
    }

    private static List<Attribute> takes(Category category) {
        return PartAttributes.of(category).attributes();
    }

    private PartSpec part(UUID id) {
        return catalog.spec(id).orElseThrow(() -> Refusal.notFound("part-spec.not-found"));
    }

    /** The page has one field for all attributes. */
    private static String ofPage(String field) {
        return field.startsWith("attributes.") ? "attributes" : field;
    }
}
