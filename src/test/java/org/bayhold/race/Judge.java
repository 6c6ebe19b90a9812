package org.bayhold.race;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import javax.sql.DataSource;
import org.bayhold.buildsheet.BruteForceGate;
import org.bayhold.buildsheet.Fact;
import org.bayhold.calibration.Revision;
import org.bayhold.race.Violation.Kind;
import org.bayhold.vehicle.Registration;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Reads what a race left in the journal, and holds it against docs/rules.md without asking the product anything. */
final class Judge {
    private static final Set<String> FOLLOWS_IN_THE_SAME_WRITE =
            Set.of("RETUNE_OPENED", "RETUNE_JOINED", "RETUNE_LAPSED");

    private final DataSource database;
    private final List<Violation> violations = new ArrayList<>();
    private int entries;
    private int clearHandovers;

    Judge(DataSource database) {
        this.database = database;
    }

    List<Violation> violations() {
        return violations;
    }

    int entries() {
        return entries;
    }

    int clearHandovers() {
        return clearHandovers;
    }

    Judge judge(Collection<UUID> cars) {
        List<Revision> revisions = Said.revisions(database);
        Set<UUID> toBeCalled = toBeCalled();
        for (UUID car : cars) {
            Chain chain = Chain.read(database, car);
            entries += chain.rows().size();
            order(chain);
            items(chain);
            handovers(chain, revisions);
            withdrawn(chain, revisions, toBeCalled);
        }
        return this;
    }

    private void order(Chain chain) {
        Chain.Row before = null;
        for (Chain.Row row : chain.rows()) {
            if (!row.isWhole(chain.id())) {
                report(Kind.ENTRY_BROKEN, chain, row);
            }
            String prev = before == null ? "0".repeat(64) : before.hash();
            if (row.seq() != (before == null ? 1 : before.seq() + 1)
                    || !row.prevHash().equals(prev)) {
                report(Kind.CHAIN_BROKEN, chain, row);
            }
            if (before != null && !row.recordedAt().isAfter(before.recordedAt()) && !isOfTheSameWrite(row, before)) {
                report(Kind.TIME_RUNS_BACKWARDS, chain, row);
            }
            before = row;
        }
        Chain.Row last = before;
        boolean headAgrees = last != null
                && JdbcClient.create(database)
                        .sql("select count(*) from chain_head where chain_id = ? and seq = ? and last_hash = ?")
                        .params(chain.id(), last.seq(), last.hash())
                        .query(Long.class)
                        .single()
                        .equals(1L);
        if (!headAgrees) {
            violations.add(new Violation(Kind.HEAD_ELSEWHERE, chain.id(), String.valueOf(last)));
        }
    }

    private static boolean isOfTheSameWrite(Chain.Row row, Chain.Row before) {
        return row.recordedAt().equals(before.recordedAt())
                && row.by().equals(before.by())
                && FOLLOWS_IN_THE_SAME_WRITE.contains(row.kind());
    }

    /** Opened and closed as the chain tells it, whatever the list of items says. */
    private void items(Chain chain) {
        Set<String> open = new LinkedHashSet<>();
        for (Chain.Row row : chain.rows()) {
            String item = row.record().path("itemId").asString("");
            if (row.isOf("RETUNE_OPENED")) {
                open.add(item);
            } else if (row.isOf("CLEARED") || row.isOf("RETUNE_LAPSED")) {
                open.remove(item);
            }
            if (open.size() > 1) {
                report(Kind.TWO_ITEMS_OPEN, chain, row);
            }
            if (isClear(row) && !open.isEmpty()) {
                report(Kind.CLEAR_WHILE_AN_ITEM_IS_OPEN, chain, row);
            }
        }
    }

    private static boolean isClear(Chain.Row row) {
        return row.isOf("HANDED_OVER")
                && row.record().path("basis").asString("").equals("CLEAR");
    }

    private void handovers(Chain chain, List<Revision> revisions) {
        for (Chain.Row row : chain.rows()) {
            if (isClear(row)) {
                clearHandovers++;
                // in a chain that is whole both mean the same
                List<Fact> before = facts(
                        chain,
                        other -> other.seq() < row.seq() || other.recordedAt().isBefore(row.recordedAt()));
                Set<String> holds = new LinkedHashSet<>();
                for (Instant at : List.of(row.effectiveAt(), row.recordedAt())) {
                    BruteForceGate gate = gate(chain, before, revisions, at, row.recordedAt());
                    holds.addAll(gate.whatHolds());
                    if (gate.runs()
                            .filter(revision -> withdrawnBy(revision, row.recordedAt()))
                            .isPresent()) {
                        report(Kind.CLEAR_ON_A_WITHDRAWN_REVISION, chain, row);
                    }
                }
                if (!holds.isEmpty()) {
                    violations.add(new Violation(
                            Kind.CLEAR_AGAINST_THE_RECORD, chain.id(), "entry " + row.seq() + ": " + holds));
                }
            }
        }
    }

    private static boolean withdrawnBy(Revision revision, Instant at) {
        return revision.withdrawnAt() != null && !revision.withdrawnAt().isAfter(at);
    }

    private void withdrawn(Chain chain, List<Revision> revisions, Set<UUID> toBeCalled) {
        Instant end = chain.rows().stream()
                .map(Chain.Row::recordedAt)
                .max(Instant::compareTo)
                .orElseThrow();
        Instant late = end.plusSeconds(3600);
        BruteForceGate gate = gate(chain, facts(chain, row -> true), revisions, late, late);
        Optional<Revision> withdrawn = gate.runs().filter(revision -> withdrawnBy(revision, late));
        if (withdrawn.filter(revision -> !toBeCalled.contains(revision.id())).isPresent()
                && gate.openItem().isEmpty()) {
            violations.add(new Violation(Kind.WITHDRAWN_AND_NOBODY_CALLS, chain.id(), withdrawn.toString()));
        }
    }

    /** Withdrawals whose cars are still being gone through. */
    private Set<UUID> toBeCalled() {
        return Set.copyOf(JdbcClient.create(database)
                .sql("select subject_id from follow_up where done_at is null")
                .query(UUID.class)
                .list());
    }

    private static List<Fact> facts(Chain chain, Predicate<Chain.Row> wanted) {
        return Said.facts(chain.id(), chain.rows().stream().filter(wanted).toList());
    }

    private static BruteForceGate gate(
            Chain chain, List<Fact> facts, List<Revision> revisions, Instant effectiveAt, Instant knownAt) {
        Registration registration = Said.registration(chain.rows().get(0));
        return new BruteForceGate(registration, facts, revisions, effectiveAt, knownAt);
    }

    private void report(Kind kind, Chain chain, Chain.Row row) {
        violations.add(new Violation(kind, chain.id(), "entry " + row.seq() + ", " + row.kind()));
    }
}
