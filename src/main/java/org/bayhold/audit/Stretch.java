package org.bayhold.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Replay;
import org.jspecify.annotations.Nullable;

/** One handover while the time after it is walked through, from the handover to the next arrival. docs/rules.md, rule 13. */
final class Stretch {
    final Fact.HandedOver handoff;
    final boolean voided;
    private final Instant leftAt;
    private final @Nullable Instant returnedAt;
    private final @Nullable Instant settledAt;
    private final Set<Finding> findings = EnumSet.noneOf(Finding.class);
    private @Nullable Decision knownNow;
    private @Nullable Decision byRulesOfThen;
    private @Nullable Instant unmatchedSince;
    private @Nullable Instant matchedAgainAt;
    private @Nullable Instant stillSince;

    /** @param live what is not struck out, in order */
    Stretch(Fact.HandedOver handoff, boolean voided, List<Fact> live) {
        this.handoff = handoff;
        this.voided = voided;
        this.leftAt = handoff.stamp().effectiveAt();
        this.returnedAt = firstAfter(leftAt, live, Stretch::isInShop);
        this.settledAt = returnedAt == null
                ? null
                : firstAfter(
                        leftAt,
                        live,
                        fact -> !fact.stamp().effectiveAt().isBefore(returnedAt)
                                && (fact instanceof Fact.Flashed || fact instanceof Fact.HandedOver));
    }

    private static @Nullable Instant firstAfter(Instant moment, List<Fact> live, Predicate<Fact> wanted) {
        return live.stream()
                .filter(fact -> fact.stamp().effectiveAt().isAfter(moment))
                .filter(wanted)
                .findFirst()
                .map(fact -> fact.stamp().effectiveAt())
                .orElse(null);
    }

    /** It arrived, or the shop worked on it, which implies that it had. */
    private static boolean isInShop(Fact fact) {
        return fact instanceof Fact.Arrived
                || (fact instanceof Fact.PartChanged change && change.source() == Fact.Source.SHOP)
                || (fact instanceof Fact.Inspected inspection && inspection.source() == Fact.Source.SHOP)
                || (fact instanceof Fact.Flashed flash && flash.source() == Fact.Source.SHOP)
                || (fact instanceof Fact.ReadBack check && check.source() == Fact.Source.SHOP);
    }

    boolean beginsAt(Instant moment) {
        return leftAt.equals(moment);
    }

    /** On the road, or on the road once and not matched since. */
    boolean looksAt(Instant moment) {
        return !voided
                && !moment.isBefore(leftAt)
                && (isOut(moment) || isReturned(moment) || (unmatchedSince != null && matchedAgainAt == null));
    }

    boolean isOut(Instant moment) {
        return !moment.isBefore(leftAt) && (returnedAt == null || moment.isBefore(returnedAt));
    }

    /** Back in the shop, and nothing was flashed there yet: an ECU check still tells what ran on the road. */
    private boolean isReturned(Instant moment) {
        return returnedAt != null && !moment.isBefore(returnedAt) && (settledAt == null || moment.isBefore(settledAt));
    }

    Decision knownNow() {
        return Objects.requireNonNull(knownNow);
    }

    Decision byRulesOfThen() {
        return Objects.requireNonNull(byRulesOfThen);
    }

    /** The car as known now, under the rules of now and under those that decided then. */
    void leaves(Decision now, Decision then) {
        knownNow = now;
        byRulesOfThen = then;
    }

    void stands(Instant moment, CarState car, Replay.Match match) {
        if (isOut(moment)) {
            onTheRoad(moment, car, match);
        } else if (isReturned(moment) && match.readBackDiffers()) {
            findings.add(Finding.READ_BACK_DIFFERS);
        }
        if (unmatchedSince != null && matchedAgainAt == null && !match.unmatched()) {
            matchedAgainAt = moment;
        }
    }

    private void onTheRoad(Instant moment, CarState car, Replay.Match match) {
        if (match.readBackDiffers()) {
            findings.add(Finding.READ_BACK_DIFFERS);
        }
        car.revision()
                .filter(revision -> revision.isWithdrawn(moment, car.knownAt()))
                .filter(revision ->
                        Objects.requireNonNull(revision.withdrawnAt()).isAfter(leftAt))
                .ifPresent(revision -> findings.add(Finding.WITHDRAWN_SINCE));
        if (match.unmatched() && unmatchedSince == null) {
            unmatchedSince = moment;
        }
        stillSince = match.unmatched() ? Objects.requireNonNullElse(stillSince, moment) : null;
    }

    /**
     * @param isLate a late record made the car another at the door
     * @param closedByVoiding an item closed before it because its causes were struck out
     * @param last the car now
     * @param live what is not struck out, in order
     */
    Judged judged(Decision knownThen, boolean isLate, boolean closedByVoiding, CarState last, List<Fact> live) {
        if (handoff.basis() == Fact.HandoffBasis.EXCEPTION) {
            findings.add(Finding.EXCEPTION);
        }
        if (closedByVoiding) {
            findings.add(Finding.VOIDED_CAUSE);
        }
        if (isLate) {
            findings.add(Finding.LATE_RECORD);
        }
        if (!voided && changed(last, live).anyMatch(at -> at.isAfter(leftAt) && isOut(at))) {
            findings.add(Finding.CHANGED_AFTER_HANDOFF);
        }
        return new Judged(
                handoff,
                voided,
                knownThen,
                knownNow(),
                findings,
                voided ? null : returnedAt,
                unmatchedSince,
                matchedAgainAt,
                unmatchedFor(last.knownAt()),
                returnedAt == null ? stillSince : null);
    }

    private static Stream<Instant> changed(CarState last, List<Fact> live) {
        return Stream.concat(
                last.changes().stream().map(CarState.Change::effectiveAt),
                live.stream()
                        .filter(Fact.Flashed.class::isInstance)
                        .map(flash -> flash.stamp().effectiveAt()));
    }

    private Duration unmatchedFor(Instant now) {
        Instant since = unmatchedSince;
        if (since == null) {
            return Duration.ZERO;
        }
        Instant until = Stream.of(now, returnedAt, matchedAgainAt)
                .flatMap(Stream::ofNullable)
                .min(Instant::compareTo)
                .orElseThrow();
        return Duration.between(since, until);
    }
}
