package org.bayhold.catalog;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Page;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/** Reading the catalogue. */
@Component
public class Catalog {
    private static final int LONGEST_WORDS = 200;
    private static final int CANDIDATES = 200;

    private final PartSpecs specs;
    private final Corrections corrections;
    private final CategoryMoves moves;
    private final BenefitNotes benefitNotes;
    private final CanonicalJson json;

    Catalog(
            PartSpecs specs,
            Corrections corrections,
            CategoryMoves moves,
            BenefitNotes benefitNotes,
            CanonicalJson json) {
        this.specs = specs;
        this.corrections = corrections;
        this.moves = moves;
        this.benefitNotes = benefitNotes;
        this.json = json;
    }

    /** Part specs by id, with their attributes as last corrected; unknown ids are left out. */
    public Map<UUID, PartSpec> specs(Collection<UUID> ids) {
        Map<UUID, PartSpec> found = new HashMap<>();
        if (ids.isEmpty()) {
            return found;
        }
        withCorrections(specs.findAllById(Set.copyOf(ids))).forEach(spec -> found.put(spec.id(), spec));
        return found;
    }

    /** What came after a part in its maker's list. */
    public List<PartSpec> superseding(UUID id) {
        return withCorrections(specs.superseding(id));
    }

    /** The attributes of part specs as corrected by {@code knownAt}, by id; unknown ids are left out. */
    @SuppressWarnings("unchecked") // attributes are written as a JSON object
    public Map<UUID, Map<String, Object>> attributes(Collection<UUID> ids, Instant knownAt) {
        Map<UUID, Map<String, Object>> attributes = new HashMap<>();
        if (!ids.isEmpty()) {
            Set<UUID> wanted = Set.copyOf(ids);
            specs.findAllById(wanted)
                    .forEach(row -> attributes.put(row.getId(), json.read(row.attributes(), Map.class)));
            corrections.of(wanted).stream()
                    .filter(correction -> !correction.recordedAt().isAfter(knownAt))
                    .forEach(correction ->
                            attributes.put(correction.partSpecId(), json.read(correction.attributes(), Map.class)));
        }
        return attributes;
    }

    public Optional<PartSpec> spec(UUID id) {
        return Optional.ofNullable(specs(List.of(id)).get(id));
    }

    /** Parts whose maker, number and revision hold every word that was typed, in that order; at most {@code most}. */
    public List<PartSpec> find(@Nullable Category category, @Nullable String typed, int most) {
        String words = typed == null ? "" : typed.strip().replaceAll("\\s+", " ");
        String like = Page.like(words.length() > LONGEST_WORDS ? words.substring(0, LONGEST_WORDS) : words);
        return withCorrections(specs.find(category, like.replace(' ', '%'), new UUID(0, 0), Limit.of(most)));
    }

    /** The parts that somebody means who typed exactly a number, a maker and a number, or these and a revision. */
    public List<PartSpec> named(@Nullable Category category, String typed) {
        String name = plain(typed);
        return find(category, typed, CANDIDATES).stream()
                .filter(spec -> name.equals(plain(spec.partNumber()))
                        || name.equals(plain(spec.maker() + " " + spec.partNumber()))
                        || name.equals(plain(spec.maker() + " " + spec.partNumber() + " " + spec.specRevision())))
                .toList();
    }

    private static String plain(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /**
     * The part spec that a record cites at a place.
     *
     * @param field the request's field, for the refusal
     * @throws Refusal INVALID where there is none, or it is of another category
     */
    public PartSpec cited(UUID id, Category category, String field) {
        PartSpec spec = spec(id).orElseThrow(() -> Refusal.invalid(field, "part-spec.unknown", field));
        if (spec.category() != category) {
            throw Refusal.invalid(field, "part-spec.other-category", spec.category(), category);
        }
        return spec;
    }

    /** Part specs whose maker, number or revision holds the text, and those of the given categories. */
    public List<PartSpec> search(String text, Collection<Category> categories, int atMost) {
        return withCorrections(specs.search(Page.like(text), categories, Limit.of(atMost)));
    }

    /** What counts now of what was learnt of the given part specs, what was taken back left away. */
    public List<BenefitNote> benefitNotes(Collection<UUID> partSpecIds) {
        if (partSpecIds.isEmpty()) {
            return List.of();
        }
        Map<String, BenefitNote> last = new LinkedHashMap<>();
        benefitNotes.of(Set.copyOf(partSpecIds)).stream()
                .map(BenefitNoteRow::said)
                .forEach(note -> last.put(note.partSpecId() + "\n" + note.cars(), note));
        return last.values().stream()
                .filter(note -> note.effect() != BenefitNote.Effect.NO_OBJECTION)
                .toList();
    }

    /** Every correction of the given part specs, in the order in which they were recorded. */
    public List<Correction> corrections(Collection<UUID> partSpecIds) {
        return partSpecIds.isEmpty()
                ? List.of()
                : corrections.of(Set.copyOf(partSpecIds)).stream()
                        .map(row -> new Correction(row.getId(), row.partSpecId(), row.recordedAt()))
                        .toList();
    }

    /** Every correction of the catalogue, in the order in which they were recorded. */
    public List<Correction> corrections() {
        return corrections.every();
    }

    public Optional<Correction> correction(UUID id) {
        return corrections.findById(id).map(row -> new Correction(row.getId(), row.partSpecId(), row.recordedAt()));
    }

    /** The category that a move was of. */
    public Optional<Category> movedCategory(UUID moveId) {
        return moves.findById(moveId).map(row -> row.move().category());
    }

    /** The effect groups with all their moves. */
    public EffectGroups effectGroups() {
        return new EffectGroups(
                moves.findAll().stream().map(CategoryMoveRow::move).toList());
    }

    List<PartSpec> withCorrections(List<PartSpecRow> rows) {
        Map<UUID, CorrectionRow> last = new HashMap<>();
        if (!rows.isEmpty()) {
            corrections
                    .of(rows.stream().map(PartSpecRow::getId).toList())
                    .forEach(correction -> last.put(correction.partSpecId(), correction));
        }
        return rows.stream()
                .map(row -> spec(row, Optional.ofNullable(last.get(row.getId()))))
                .toList();
    }

    @SuppressWarnings("unchecked") // attributes are written as a JSON object
    private PartSpec spec(PartSpecRow row, Optional<CorrectionRow> correction) {
        Map<String, Object> attributes =
                json.read(correction.map(CorrectionRow::attributes).orElse(row.attributes()), Map.class);
        return new PartSpec(
                row.getId(),
                row.category(),
                row.maker(),
                row.partNumber(),
                row.specRevision(),
                attributes,
                row.complianceNote(),
                row.supersedes(),
                row.recordedAt(),
                correction.map(CorrectionRow::recordedAt).orElse(null));
    }
}
