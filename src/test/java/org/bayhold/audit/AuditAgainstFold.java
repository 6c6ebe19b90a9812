package org.bayhold.audit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.gate.Replay;
import org.bayhold.gate.Replays;
import org.bayhold.support.FreshBayhold;

/**
 * The audit that reads many cars from typed columns, held against the rule as it reads on each car's journal; and the decision
 * that was stored with each handover against the gate asked again with what was known then. docs/rules.md, rules 13, 14.
 */
public final class AuditAgainstFold {
    private final List<String> differences = new ArrayList<>();
    private final Set<Finding> findings = new HashSet<>();
    private int handoffs;

    private AuditAgainstFold() {}

    /** Of every handover of these cars, which are all that the shop has. */
    public static AuditAgainstFold of(FreshBayhold bayhold, Collection<UUID> cars) {
        AuditAgainstFold held = new AuditAgainstFold();
        CarRecords records = bayhold.bean(CarRecords.class);
        Replay gate = bayhold.bean(Replays.class).replay();
        HandoffAudit audit = bayhold.bean(HandoffAudit.class);
        HandoffAudit.Ready ready = audit.ready(AuditQuestion.ALL);
        List<AuditedHandoff> rows = new ArrayList<>();
        audit.tell(ready, rows::add);
        Map<UUID, List<AuditedHandoff>> told =
                rows.stream().collect(Collectors.groupingBy(row -> row.vehicle().id()));
        for (UUID car : cars) {
            held.compare(
                    told.getOrDefault(car, List.of()),
                    PlainAudit.of(records.of(car), gate, ready.search().knownAt()).stream()
                            .collect(Collectors.toMap(
                                    judged -> judged.handoff().stamp().id(), judged -> judged)));
        }
        if (!cars.containsAll(told.keySet())) {
            held.differences.add("handovers of cars that were not asked for");
        }
        return held;
    }

    private void compare(List<AuditedHandoff> fast, Map<UUID, Judged> plain) {
        if (fast.size() != plain.size()) {
            differences.add(fast.size() + " handovers told, " + plain.size() + " on record");
        }
        for (AuditedHandoff row : fast) {
            handoffs++;
            findings.addAll(row.findings());
            Judged judged = plain.get(row.handoffId());
            if (judged == null || !says(row).equals(says(judged))) {
                differences.add(says(row) + " by the audit, " + (judged == null ? "nothing" : says(judged)));
            }
            if (row.decidedThen() != row.knownThen() || !row.failedThen().equals(row.failedKnownThen())) {
                differences.add(row.decidedThen() + " " + row.failedThen() + " was decided, the record of then says "
                        + row.knownThen() + " " + row.failedKnownThen());
            }
        }
    }

    private static String says(AuditedHandoff row) {
        return String.join(
                " ",
                row.knownThen().toString(),
                row.knownNow().toString(),
                new TreeSet<>(row.findings()).toString(),
                "since " + row.unmatchedSince(),
                "again " + row.matchedAgainAt(),
                "still " + row.stillUnmatchedSince(),
                "back " + row.returnedAt(),
                "voided " + row.voided());
    }

    private static String says(Judged judged) {
        return String.join(
                " ",
                judged.knownThen().verdict().toString(),
                judged.knownNow().verdict().toString(),
                new TreeSet<>(judged.findings()).toString(),
                "since " + judged.unmatchedSince(),
                "again " + judged.matchedAgainAt(),
                "still " + judged.stillSince(),
                "back " + judged.returnedAt(),
                "voided " + judged.voided());
    }

    public List<String> differences() {
        return differences;
    }

    public int handoffs() {
        return handoffs;
    }

    public int kindsOfFindings() {
        return findings.size();
    }
}
