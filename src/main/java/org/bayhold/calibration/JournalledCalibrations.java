package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.bayhold.calibration.CalibrationWrites.Withdrawn;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.springframework.stereotype.Component;

/** The rows of revisions, their coverage, their maps and their withdrawals say what their entries say. */
@Component
class JournalledCalibrations implements JournalledRows {
    private static final String REVISIONS = "calibration";
    private static final String COVERAGE = "calibration_coverage";
    private static final String MAPS = "calibration_map";
    private static final String WITHDRAWALS = "calibration_withdrawal";

    private final CanonicalJson json;

    JournalledCalibrations(CanonicalJson json) {
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        Set<String> issued = Set.of(CalibrationWrites.ISSUED);
        return List.of(
                JournalledTable.ofChains(REVISIONS, issued, "id"),
                JournalledTable.ofChains(COVERAGE, issued, "calibration_id", "row_no"),
                JournalledTable.ofChains(MAPS, issued, "calibration_id", "row_no"),
                JournalledTable.ofChains(WITHDRAWALS, Set.of(CalibrationWrites.WITHDRAWN), "calibration_id"));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        return switch (entry.kind()) {
            case CalibrationWrites.ISSUED -> issued(entry);
            case CalibrationWrites.WITHDRAWN -> List.of(withdrawn(entry));
            default -> List.of();
        };
    }

    private List<JournalledRow> issued(Entry entry) {
        CalibrationIssued issued = json.read(entry.record(), CalibrationIssued.class);
        CalibrationRow row =
                new CalibrationRow(entry.chain(), issued, json.write(issued.assumes()), entry.recordedAt(), entry.by());
        List<JournalledRow> rows = new ArrayList<>();
        // folded to lower case by the Java of its day, and not the same in every release
        rows.add(JournalledRow.of(REVISIONS, row).without("name_key"));
        rows.addAll(numbered(COVERAGE, entry, row.coverage()));
        rows.addAll(numbered(MAPS, entry, row.maps()));
        rows.add(JournalledRow.head(entry.chain(), ChainKind.CALIBRATION));
        return rows;
    }

    private static List<JournalledRow> numbered(String table, Entry entry, List<?> list) {
        List<JournalledRow> rows = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            rows.add(JournalledRow.of(table, list.get(i))
                    .with("calibration_id", entry.chain())
                    .with("row_no", i));
        }
        return rows;
    }

    private JournalledRow withdrawn(Entry entry) {
        Withdrawn withdrawn = json.read(entry.record(), Withdrawn.class);
        return JournalledRow.of(
                WITHDRAWALS, new WithdrawalRow(entry.chain(), withdrawn.reason().id(), entry.recordedAt(), entry.by()));
    }
}
