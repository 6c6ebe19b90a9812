package org.bayhold.advice;

import java.util.List;
import java.util.Set;
import org.bayhold.advice.AdviceWrites.Dropped;
import org.bayhold.advice.AdviceWrites.Planned;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.springframework.stereotype.Component;

/** Answers and planned work say what their entries say. */
@Component
class JournalledAdvice implements JournalledRows {
    private static final String ADVICE = "advice";
    private static final String PLANS = "planned_work";
    private static final String DROPPED = "planned_work_dropped";

    private final CanonicalJson json;

    JournalledAdvice(CanonicalJson json) {
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(
                JournalledTable.ofChains(ADVICE, Set.of(AdviceWrites.GIVEN), "id"),
                JournalledTable.ofEntries(PLANS, Set.of(AdviceWrites.PLANNED), "id")
                        .placed("advice_id", null),
                JournalledTable.ofEntries(DROPPED, Set.of(AdviceWrites.DROPPED), "id")
                        .placed("advice_id", null));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        return switch (entry.kind()) {
            case AdviceWrites.GIVEN -> List.of(given(entry), JournalledRow.head(entry.chain(), ChainKind.ADVICE));
            case AdviceWrites.PLANNED -> List.of(planned(entry));
            case AdviceWrites.DROPPED -> List.of(dropped(entry));
            default -> List.of();
        };
    }

    private JournalledRow given(Entry entry) {
        AdviceGiven given = json.read(entry.record(), AdviceGiven.class);
        AdviceRow row =
                new AdviceRow(entry.chain(), given, "", json.write(given.body()), entry.recordedAt(), entry.by());
        // made of the labels of its day
        return JournalledRow.of(ADVICE, row).without("words");
    }

    private JournalledRow planned(Entry entry) {
        Planned planned = json.read(entry.record(), Planned.class);
        return JournalledRow.of(
                PLANS, new PlanRow(entry.id(), entry.chain(), planned.vehicleId(), entry.recordedAt(), entry.by()));
    }

    private JournalledRow dropped(Entry entry) {
        Dropped dropped = json.read(entry.record(), Dropped.class);
        return JournalledRow.of(
                DROPPED,
                new DroppedPlanRow(entry.id(), dropped.plannedWorkId(), entry.chain(), entry.recordedAt(), entry.by()));
    }
}
