package org.bayhold.gate;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.Fact;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Entry;
import org.bayhold.journal.Journal;
import org.springframework.stereotype.Component;

/** The gate for those who look back. */
@Component
public class Replays {
    private final PolicyBook policyBook;
    private final Journal journal;
    private final CarRecords records;
    private final CanonicalJson json;

    Replays(PolicyBook policyBook, Journal journal, CarRecords records, CanonicalJson json) {
        this.policyBook = policyBook;
        this.journal = journal;
        this.records = records;
        this.json = json;
    }

    /** Under every policy that is on record now. */
    public Replay replay() {
        return new Replay(policyBook.policies());
    }

    /** The checks that failed in the decisions that were stored with handovers, by handover. */
    public Map<UUID, List<Check>> failedThen(Collection<UUID> handoffIds) {
        Map<UUID, List<Check>> failed = new HashMap<>();
        for (Entry entry : journal.entries(handoffIds)) {
            if (records.fact(entry).orElseThrow() instanceof Fact.HandedOver handoff) {
                failed.put(entry.id(), failed(handoff));
            }
        }
        return failed;
    }

    private List<Check> failed(Fact.HandedOver handoff) {
        return json.read(handoff.decision(), DecisionView.class).checks().stream()
                .filter(check -> check.outcome() == Outcome.FAIL)
                .map(DecisionView.CheckView::code)
                .toList();
    }
}
