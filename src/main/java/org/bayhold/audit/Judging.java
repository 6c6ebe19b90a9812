package org.bayhold.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CarWalk;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.gate.CheckResult;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Replay;

/**
 * The handovers of one car held against its record. Pure. The record as known now is walked through once for all of
 * them; only what was known then is folded for each by itself. docs/rules.md, rules 13 and 14.
 */
final class Judging {
    /** In which the audit tells them, and goes on after one of them. */
    private static final Comparator<Stamp> IN_ORDER =
            Comparator.comparing(Stamp::effectiveAt).thenComparingLong(Stamp::seq);

    private final CarRecord record;
    private final Replay gate;
    private final Instant now;
    private final CarWalk walk;

    private Judging(CarRecord record, Replay gate, Instant now) {
        this.record = record;
        this.gate = gate;
        this.now = now;
        this.walk = new CarWalk(record, now);
    }

    /** In the order in which they happened, as known and counted at {@code now}. */
    static List<Judged> of(CarRecord record, Replay gate, Instant now) {
        return new Judging(record, gate, now).handoffs();
    }

    private List<Judged> handoffs() {
        List<Stretch> stretches = walk.known().stream()
                .filter(Fact.HandedOver.class::isInstance)
                .map(Fact.HandedOver.class::cast)
                .filter(handoff -> !handoff.stamp().effectiveAt().isAfter(now))
                .map(handoff -> new Stretch(handoff, walk.isStruckOut(handoff), walk.live()))
                .sorted(Comparator.comparing((Stretch stretch) -> stretch.handoff.stamp(), IN_ORDER))
                .toList();
        if (stretches.isEmpty()) {
            return List.of();
        }
        NavigableSet<Instant> moments = walk.moments();
        stretches.forEach(stretch -> moments.add(stretch.handoff.stamp().effectiveAt()));
        for (Instant moment : moments.headSet(now)) {
            look(moment, stretches);
        }
        look(now, stretches);
        CarState last = walk.to(now);
        List<Judged> judged = new ArrayList<>();
        for (Stretch stretch : stretches) {
            judged.add(judged(stretch, last));
        }
        return judged;
    }

    private void look(Instant moment, List<Stretch> stretches) {
        boolean looks = stretches.stream().anyMatch(stretch -> stretch.looksAt(moment));
        boolean leaves = stretches.stream().anyMatch(stretch -> stretch.beginsAt(moment));
        if (!looks && !leaves) {
            return;
        }
        CarState car = walk.to(moment);
        if (leaves) {
            Decision decision = gate.decide(record, car);
            stretches.stream()
                    .filter(stretch -> stretch.beginsAt(moment))
                    .forEach(stretch -> stretch.leaves(decision, asOfThen(stretch.handoff, car, decision)));
        }
        if (looks) {
            Replay.Match match = gate.match(record, car);
            stretches.stream()
                    .filter(stretch -> stretch.looksAt(moment))
                    .forEach(stretch -> stretch.stands(moment, car, match));
        }
    }

    /** Under the version of the rules that decided at the handover (rule 14). */
    private Decision asOfThen(Fact.HandedOver handoff, CarState car, Decision now) {
        return handoff.rulesOfThen() == now.rules() ? now : gate.decide(record, car, handoff.rulesOfThen());
    }

    private Judged judged(Stretch stretch, CarState last) {
        Fact.HandedOver handoff = stretch.handoff;
        Stamp stamp = handoff.stamp();
        boolean asThen = stamp.effectiveAt().equals(stamp.recordedAt()) && !isSeenOtherwise(stamp);
        if (asThen) {
            return stretch.judged(stretch.byRulesOfThen(), false, closedByVoiding(handoff), last, walk.live());
        }
        CarRecord before = record.with(record.facts().stream()
                .filter(fact -> fact.stamp().seq() < stamp.seq())
                .toList());
        Decision knownThen = gate.atTheDoor(before, stamp.effectiveAt(), stamp.recordedAt(), handoff.rulesOfThen());
        return stretch.judged(
                knownThen, !stretch.voided && isLate(stretch, before), closedByVoiding(handoff), last, walk.live());
    }

    /**
     * Whether anything that was recorded after the handover may make the car at the handover another: then the gate has to
     * be asked with what was known. For most handovers there is none, and what is known now was known then.
     */
    private boolean isSeenOtherwise(Stamp handoff) {
        return !record.corrections().isEmpty()
                || record.groups().moves().stream()
                        .anyMatch(move -> move.recordedAt().isAfter(handoff.recordedAt())
                                && !move.effectiveAt().isAfter(handoff.effectiveAt()))
                || walk.known().stream()
                        .filter(fact -> fact.stamp().seq() > handoff.seq())
                        .anyMatch(fact -> fact instanceof Fact.Voided
                                || fact instanceof Fact.RetuneLapsed
                                || !fact.stamp().effectiveAt().isAfter(handoff.effectiveAt())
                                || Replay.told(fact).stream()
                                        .anyMatch(cause -> !cause.effectiveAt().isAfter(handoff.effectiveAt())));
    }

    /** Something about the time before it was recorded after it, and with that the car was another at the door. */
    private boolean isLate(Stretch stretch, CarRecord before) {
        Stamp handoff = stretch.handoff.stamp();
        boolean late = walk.live().stream()
                .filter(fact -> fact.stamp().seq() > handoff.seq())
                .filter(fact -> !fact.stamp().effectiveAt().isAfter(handoff.effectiveAt()))
                .anyMatch(Judging::isAboutTheCar);
        if (!late) {
            return false;
        }
        Decision then = gate.decide(before, before.at(handoff.effectiveAt(), handoff.recordedAt()));
        return !told(then).equals(told(stretch.knownNow()));
    }

    private static boolean isAboutTheCar(Fact fact) {
        return fact instanceof Fact.PartChanged
                || fact instanceof Fact.Inspected
                || fact instanceof Fact.Flashed
                || fact instanceof Fact.ReadBack;
    }

    private record Told(List<CheckResult> failed, List<?> mismatches) {}

    /** What a decision tells about the match of car and calibration. */
    private static Told told(Decision decision) {
        List<CheckResult> failed = Replay.failedMatch(decision);
        return new Told(failed, failed.isEmpty() ? List.of() : decision.mismatches());
    }

    /** Since the handover before it an item closed because all its causes were struck out. Nothing undoes that. */
    private boolean closedByVoiding(Fact.HandedOver handoff) {
        long seq = handoff.stamp().seq();
        long before = walk.known().stream()
                .filter(Fact.HandedOver.class::isInstance)
                .filter(fact -> fact.stamp().seq() < seq && !walk.isStruckOut(fact))
                .mapToLong(fact -> fact.stamp().seq())
                .max()
                .orElse(0);
        return walk.known().stream()
                .filter(Fact.RetuneLapsed.class::isInstance)
                .mapToLong(fact -> fact.stamp().seq())
                .anyMatch(lapsed -> lapsed > before && lapsed < seq);
    }
}
