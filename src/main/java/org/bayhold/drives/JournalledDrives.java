package org.bayhold.drives;

import java.util.List;
import java.util.Set;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.springframework.stereotype.Component;

/** Each judged drive has its judgement, and each meaning of a column is as it was told. */
@Component
class JournalledDrives implements JournalledRows {
    static final String DRIVE_LOGGED = "DRIVE_LOGGED";
    private static final String JUDGEMENTS = "drive_log_judgement";
    private static final String MEANINGS = "column_meaning";

    private final CarRecords records;
    private final CanonicalJson json;

    JournalledDrives(CarRecords records, CanonicalJson json) {
        this.records = records;
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(
                JournalledTable.ofEntries(JUDGEMENTS, Set.of(DRIVE_LOGGED), "fact_id"),
                JournalledTable.ofEntries(MEANINGS, Set.of(ColumnMeanings.TOLD), "id"));
    }

    /** What a judgement says is held against its hash when it is read, not at every start. */
    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        if (entry.kind().equals(ColumnMeanings.TOLD)) {
            ColumnMeanings.Told told = json.read(entry.record(), ColumnMeanings.Told.class);
            return List.of(
                    JournalledRow.of(MEANINGS, new ColumnMeaningRow(entry.id(), told, entry.recordedAt(), entry.by())));
        }
        return entry.kind().equals(DRIVE_LOGGED)
                ? records.fact(entry).stream()
                        .map(DriveLogged.class::cast)
                        .map(fact -> JournalledRow.keyed(JUDGEMENTS, "fact_id", entry.id())
                                .with("sha256", fact.judgementSha256()))
                        .toList()
                : List.of();
    }
}
