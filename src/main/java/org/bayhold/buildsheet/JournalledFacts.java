package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.springframework.stereotype.Component;

/** Each fact's typed columns say what its entry says. */
@Component
class JournalledFacts implements JournalledRows {
    private static final String FACTS = "fact";
    private static final String LINES = "inspection_line";

    private final CarRecords records;

    JournalledFacts(CarRecords records) {
        this.records = records;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(
                JournalledTable.ofEntries(FACTS, FactKinds.all(), "id").placed("vehicle_id", "seq"),
                JournalledTable.ofEntries(LINES, Set.of(FactKinds.name(Fact.Inspected.class)), "fact_id", "line_no"));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        Optional<Fact> fact = records.fact(entry);
        if (fact.isEmpty()) {
            return List.of();
        }
        FactRow row = new FactRow(fact.get());
        List<JournalledRow> rows = new ArrayList<>();
        rows.add(JournalledRow.of(FACTS, row));
        for (int i = 0; i < row.lines().size(); i++) {
            rows.add(JournalledRow.of(LINES, row.lines().get(i))
                    .with("fact_id", entry.id())
                    .with("line_no", i));
        }
        return rows;
    }
}
