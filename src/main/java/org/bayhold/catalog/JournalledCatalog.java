package org.bayhold.catalog;

import java.util.List;
import java.util.Set;
import org.bayhold.catalog.CatalogWrites.Corrected;
import org.bayhold.catalog.CatalogWrites.Moved;
import org.bayhold.catalog.CatalogWrites.NewNote;
import org.bayhold.catalog.CatalogWrites.NewSpec;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.springframework.stereotype.Component;

/** The catalogue's rows say what their entries say. */
@Component
class JournalledCatalog implements JournalledRows {
    private static final String SPECS = "part_spec";
    private static final String CORRECTIONS = "part_spec_correction";
    private static final String MOVES = "category_move";
    private static final String NOTES = "part_spec_benefit_note";

    private final CanonicalJson json;

    JournalledCatalog(CanonicalJson json) {
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(
                JournalledTable.ofChains(SPECS, Set.of(CatalogWrites.ADDED), "id"),
                JournalledTable.ofEntries(CORRECTIONS, Set.of(CatalogWrites.CORRECTED), "id")
                        .placed("part_spec_id", null),
                JournalledTable.ofEntries(MOVES, Set.of(CatalogWrites.MOVED), "id"),
                JournalledTable.ofEntries(NOTES, Set.of(CatalogWrites.NOTED), "id")
                        .placed("part_spec_id", null));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        return switch (entry.kind()) {
            case CatalogWrites.ADDED -> List.of(spec(entry), JournalledRow.head(entry.chain(), ChainKind.PART_SPEC));
            case CatalogWrites.CORRECTED -> List.of(correction(entry));
            case CatalogWrites.MOVED -> List.of(move(entry));
            case CatalogWrites.NOTED -> List.of(note(entry));
            default -> List.of();
        };
    }

    private JournalledRow spec(Entry entry) {
        NewSpec spec = json.read(entry.record(), NewSpec.class);
        PartSpecRow row = new PartSpecRow(
                entry.chain(),
                spec.category(),
                spec.maker(),
                spec.partNumber(),
                spec.specRevision(),
                json.write(spec.attributes()),
                spec.complianceNote(),
                spec.supersedes(),
                entry.recordedAt(),
                entry.by());
        // folded to lower case by the Java of its day, and not the same in every release
        return JournalledRow.of(SPECS, row).without("name_key");
    }

    private JournalledRow correction(Entry entry) {
        Corrected corrected = json.read(entry.record(), Corrected.class);
        return JournalledRow.of(
                CORRECTIONS,
                new CorrectionRow(
                        entry.id(),
                        corrected.partSpecId(),
                        json.write(corrected.attributes()),
                        corrected.reason().id(),
                        entry.recordedAt(),
                        entry.by()));
    }

    private JournalledRow note(Entry entry) {
        BenefitNote said = json.read(entry.record(), NewNote.class).said(entry.id(), entry.chain(), entry.recordedAt());
        return JournalledRow.of(NOTES, new BenefitNoteRow(said, entry.by()));
    }

    private JournalledRow move(Entry entry) {
        Moved moved = json.read(entry.record(), Moved.class);
        CategoryMove move =
                new CategoryMove(moved.category(), moved.noEffect(), entry.effectiveAt(), entry.recordedAt());
        return JournalledRow.of(
                MOVES, new CategoryMoveRow(entry.id(), move, moved.reason().id(), entry.by()));
    }
}
