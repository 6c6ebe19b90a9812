package org.bayhold.catalog;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Chains;
import org.bayhold.journal.FollowUp;
import org.bayhold.journal.FollowUpWorker;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Personal;
import org.bayhold.journal.WriteRequest;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.journal.Written;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** Writing the catalogue. */
@Component
class CatalogWrites {
    static final String ADDED = "PART_SPEC_ADDED";
    static final String CORRECTED = "PART_SPEC_CORRECTED";
    static final String MOVED = "CATEGORY_MOVED";
    static final String NOTED = "BENEFIT_NOTED";

    private final PartSpecs specs;
    private final Corrections corrections;
    private final CategoryMoves moves;
    private final BenefitNotes benefitNotes;
    private final Catalog catalog;
    private final WriteTemplate writes;
    private final CanonicalJson json;
    private final ObjectProvider<FollowUpWorker> worker;

    CatalogWrites(
            PartSpecs specs,
            Corrections corrections,
            CategoryMoves moves,
            BenefitNotes benefitNotes,
            Catalog catalog,
            WriteTemplate writes,
            CanonicalJson json,
            ObjectProvider<FollowUpWorker> worker) {
        this.specs = specs;
        this.corrections = corrections;
        this.moves = moves;
        this.benefitNotes = benefitNotes;
        this.catalog = catalog;
        this.writes = writes;
        this.json = json;
        this.worker = worker;
    }

    /** A part spec as asked for. */
    record NewSpec(
            Category category,
            String maker,
            String partNumber,
            String specRevision,
            Map<String, Object> attributes,
            @Nullable String complianceNote,
            @Nullable UUID supersedes) {}

    record Corrected(UUID partSpecId, Map<String, Object> attributes, Personal reason) {}

    /** A {@link BenefitNote} as asked for. */
    record NewNote(
            BenefitNote.Effect effect,
            @Nullable String engine,
            @Nullable String ecuHardware,
            String note) {
        BenefitNote said(UUID id, UUID partSpecId, Instant recordedAt) {
            return new BenefitNote(id, partSpecId, effect, engine, ecuHardware, note, recordedAt);
        }
    }

    record Moved(Category category, boolean noEffect, Personal reason) {}

    /** A recorded correction, as answered. */
    record CorrectionMade(UUID correctionId, PartSpec partSpec) {}

    /** A recorded move, as answered. */
    record MoveMade(UUID id, Category category, EffectGroup group) {}

    Written<PartSpec> add(WriteRequest request, NewSpec spec) {
        UUID id = Ids.next();
        return writes.begin(request, id, ChainKind.PART_SPEC, PartSpec.class, chain -> {
            String key = PartSpecRow.nameKey(spec.maker(), spec.partNumber(), spec.specRevision());
            if (specs.isNamed(key)) {
                throw Refusal.conflict(
                        "partNumber", "part-spec.exists", spec.maker(), spec.partNumber(), spec.specRevision());
            }
            if (spec.supersedes() != null) {
                catalog.cited(spec.supersedes(), spec.category(), "supersedes");
            }
            PartSpecRow row = new PartSpecRow(
                    id,
                    spec.category(),
                    spec.maker(),
                    spec.partNumber(),
                    spec.specRevision(),
                    json.write(spec.attributes()),
                    spec.complianceNote(),
                    spec.supersedes(),
                    chain.recordedAt(),
                    chain.by());
            specs.save(row);
            chain.append(ADDED, id, chain.recordedAt(), spec);
            return catalog.withCorrections(List.of(row)).get(0);
        });
    }

    /** Locks out every decision that may rest on the part, so that no car slips between the correction and its items. */
    Written<CorrectionMade> correct(
            WriteRequest request, UUID partSpecId, Map<String, Object> attributes, String reason) {
        PartSpec known = catalog.spec(partSpecId).orElseThrow(() -> Refusal.notFound("part-spec.not-found"));
        Written<CorrectionMade> written = writes.write(request, partSpecId, CorrectionMade.class, chain -> {
            chain.takeShop();
            UUID id = Ids.next();
            Personal why = chain.keepText(reason);
            CorrectionRow row =
                    new CorrectionRow(id, partSpecId, json.write(attributes), why.id(), chain.recordedAt(), chain.by());
            corrections.save(row);
            chain.followUp(FollowUp.Kind.CORRECTION, id);
            chain.append(CORRECTED, id, chain.recordedAt(), new Corrected(partSpecId, attributes, why));
            return new CorrectionMade(
                    id,
                    new PartSpec(
                            partSpecId,
                            known.category(),
                            known.maker(),
                            known.partNumber(),
                            known.specRevision(),
                            attributes,
                            known.complianceNote(),
                            known.supersedes(),
                            known.recordedAt(),
                            row.recordedAt()));
        });
        worker.ifAvailable(next -> next.workOff(written.value().correctionId()));
        return written;
    }

    /** No decision rests on such a note, so that nothing waits for it. */
    Written<BenefitNote> note(WriteRequest request, UUID partSpecId, NewNote note) {
        return writes.write(request, partSpecId, BenefitNote.class, chain -> {
            BenefitNote said = note.said(Ids.next(), partSpecId, chain.recordedAt());
            benefitNotes.save(new BenefitNoteRow(said, chain.by()));
            chain.append(NOTED, said.id(), said.recordedAt(), note);
            return said;
        });
    }

    Written<MoveMade> move(WriteRequest request, Category category, boolean noEffect, String reason) {
        Written<MoveMade> written = writes.write(request, Chains.SHOP, MoveMade.class, chain -> {
            UUID id = Ids.next();
            Personal why = chain.keepText(reason);
            CategoryMove move = new CategoryMove(category, noEffect, chain.recordedAt(), chain.recordedAt());
            moves.save(new CategoryMoveRow(id, move, why.id(), chain.by()));
            chain.followUp(FollowUp.Kind.CATEGORY_MOVE, id);
            chain.append(MOVED, id, move.effectiveAt(), new Moved(category, noEffect, why));
            EffectGroup group = new EffectGroups(List.of(move)).of(category, move.effectiveAt(), move.recordedAt());
            return new MoveMade(id, category, group);
        });
        worker.ifAvailable(next -> next.workOff(written.value().id()));
        return written;
    }
}
