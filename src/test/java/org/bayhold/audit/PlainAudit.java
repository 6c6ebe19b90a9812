package org.bayhold.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fold;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.gate.CheckResult;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Reason;
import org.bayhold.gate.Replay;

/**
 * Rule 13 as it reads: each handover by itself, and for every moment that there is a fold of its own and the whole gate.
 * What the audit does in another way must come to the same.
 */
final class PlainAudit {
    private static final Set<String> MATCH = Set.of(
            "PARTS_KNOWN", "FLASH_COMPLETED", "FLASH_AFTER_LAST_CHANGE", "CALIBRATION_IN_FORCE", "PARTS_COVERED");

    private final CarRecord record;
    private final Replay gate;
    private final Instant now;
    private final Set<UUID> struckOut;
    private final List<Fact> live;
    private final TreeSet<Instant> moments = new TreeSet<>();

    private PlainAudit(CarRecord record, Replay gate, Instant now) {
        this.record = record;
        this.gate = gate;
        this.now = now;
        this.struckOut = Fold.voided(record.facts(), now);
        this.live = record.facts().stream()
                .filter(fact -> !fact.stamp().recordedAt().isAfter(now))
                .filter(fact -> !struckOut.contains(fact.stamp().id()))
                .toList();
        record.facts().forEach(fact -> moments.add(fact.stamp().effectiveAt()));
        record.revisions()
                .forEach(revision -> Optional.ofNullable(revision.withdrawnAt()).ifPresent(moments::add));
        record.groups().moves().stream().map(CategoryMove::effectiveAt).forEach(moments::add);
        moments.removeIf(moment -> moment.isAfter(now));
        moments.add(now);
    }

    static List<Judged> of(CarRecord record, Replay gate, Instant now) {
        PlainAudit audit = new PlainAudit(record, gate, now);
        return record.facts().stream()
                .filter(Fact.HandedOver.class::isInstance)
                .filter(fact -> !fact.stamp().recordedAt().isAfter(now))
                .filter(fact -> !fact.stamp().effectiveAt().isAfter(now))
                .sorted(Comparator.comparing((Fact fact) -> fact.stamp().effectiveAt())
                        .thenComparing(fact -> fact.stamp().seq()))
                .map(fact -> audit.judge((Fact.HandedOver) fact))
                .toList();
    }

    private Judged judge(Fact.HandedOver handoff) {
        Instant left = handoff.stamp().effectiveAt();
        Instant recorded = handoff.stamp().recordedAt();
        CarRecord before = record.with(record.facts().stream()
                .filter(fact -> fact.stamp().seq() < handoff.stamp().seq())
                .toList());
        Decision knownThen = gate.atTheDoor(before, left, recorded, handoff.rulesOfThen());
        Decision knownNow = decision(left);
        Set<Finding> findings = EnumSet.noneOf(Finding.class);
        if (handoff.basis() == Fact.HandoffBasis.EXCEPTION) {
            findings.add(Finding.EXCEPTION);
        }
        if (lapsedBefore(handoff)) {
            findings.add(Finding.VOIDED_CAUSE);
        }
        if (struckOut.contains(handoff.stamp().id())) {
            return new Judged(handoff, true, knownThen, knownNow, findings, null, null, null, Duration.ZERO, null);
        }

        Optional<Instant> returned = firstAfter(left, PlainAudit::bringsItIn);
        Instant end = returned.orElse(Instant.MAX);
        List<Instant> road = moments.stream()
                .filter(moment -> !moment.isBefore(left) && moment.isBefore(end))
                .toList();
        Optional<Instant> unmatched = road.stream().filter(this::isUnmatched).findFirst();
        Optional<Instant> matched = unmatched.flatMap(since -> moments.stream()
                .filter(moment -> moment.isAfter(since) && !isUnmatched(moment))
                .findFirst());
        Instant until = Stream.of(Optional.of(now), returned, matched)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder())
                .orElseThrow();

        if (isLate(handoff, decided(before, left, recorded), knownNow)) {
            findings.add(Finding.LATE_RECORD);
        }
        if (road.stream().anyMatch(moment -> withdrawnSince(left, moment))) {
            findings.add(Finding.WITHDRAWN_SINCE);
        }
        if (changes().stream().anyMatch(moment -> moment.isAfter(left) && moment.isBefore(end))) {
            findings.add(Finding.CHANGED_AFTER_HANDOFF);
        }
        Instant settled = returned.flatMap(back -> live.stream()
                        .filter(fact -> fact instanceof Fact.Flashed || fact instanceof Fact.HandedOver)
                        .map(fact -> fact.stamp().effectiveAt())
                        .filter(at -> !at.isBefore(back))
                        .min(Comparator.naturalOrder()))
                .orElse(Instant.MAX);
        if (Stream.concat(
                        road.stream(),
                        moments.stream().filter(moment -> !moment.isBefore(end) && moment.isBefore(settled)))
                .anyMatch(this::readBackDiffers)) {
            findings.add(Finding.READ_BACK_DIFFERS);
        }
        return new Judged(
                handoff,
                false,
                knownThen,
                knownNow,
                findings,
                returned.orElse(null),
                unmatched.orElse(null),
                matched.orElse(null),
                unmatched.map(since -> Duration.between(since, until)).orElse(Duration.ZERO),
                returned.isPresent() ? null : sinceLastMatch(road).orElse(null));
    }

    /** The first moment of the unbroken stretch without a match at the end of these. */
    private Optional<Instant> sinceLastMatch(List<Instant> road) {
        List<Instant> tail = new ArrayList<>();
        for (int i = road.size() - 1; i >= 0 && isUnmatched(road.get(i)); i--) {
            tail.add(0, road.get(i));
        }
        return tail.stream().findFirst();
    }

    private Decision decision(Instant moment) {
        return decided(record, moment, now);
    }

    private Decision decided(CarRecord of, Instant moment, Instant knownAt) {
        return gate.decide(of, of.at(moment, knownAt));
    }

    private boolean isUnmatched(Instant moment) {
        return !aboutTheMatch(decision(moment)).isEmpty();
    }

    private boolean readBackDiffers(Instant moment) {
        return decision(moment).checks().stream().anyMatch(check -> check.reason() == Reason.READ_BACK_DIFFERS);
    }

    private boolean withdrawnSince(Instant left, Instant moment) {
        return decision(moment).car().revision().stream()
                .flatMap(revision -> Optional.ofNullable(revision.withdrawnAt()).stream())
                .anyMatch(at -> at.isAfter(left) && !at.isAfter(moment) && !at.isAfter(now));
    }

    private static List<CheckResult> aboutTheMatch(Decision decision) {
        return decision.checks().stream()
                .filter(CheckResult::failed)
                .filter(check -> MATCH.contains(check.code().name()) || check.reason() == Reason.READ_BACK_DIFFERS)
                .toList();
    }

    private boolean isLate(Fact.HandedOver handoff, Decision then, Decision nowadays) {
        boolean any = live.stream()
                .filter(fact -> fact instanceof Fact.PartChanged
                        || fact instanceof Fact.Inspected
                        || fact instanceof Fact.Flashed
                        || fact instanceof Fact.ReadBack)
                .anyMatch(fact -> fact.stamp().seq() > handoff.stamp().seq()
                        && !fact.stamp().effectiveAt().isAfter(handoff.stamp().effectiveAt()));
        boolean bothMatch =
                aboutTheMatch(then).isEmpty() && aboutTheMatch(nowadays).isEmpty();
        return any
                && !bothMatch
                && !(aboutTheMatch(then).equals(aboutTheMatch(nowadays))
                        && then.mismatches().equals(nowadays.mismatches()));
    }

    private List<Instant> changes() {
        CarState last = record.at(now, now);
        return Stream.concat(
                        last.changes().stream().map(CarState.Change::effectiveAt),
                        live.stream()
                                .filter(Fact.Flashed.class::isInstance)
                                .map(fact -> fact.stamp().effectiveAt()))
                .toList();
    }

    private boolean lapsedBefore(Fact.HandedOver handoff) {
        return record.facts().stream()
                .filter(Fact.RetuneLapsed.class::isInstance)
                .map(lapsed -> lapsed.stamp().seq())
                .filter(lapsed -> lapsed < handoff.stamp().seq())
                .anyMatch(lapsed -> record.facts().stream()
                        .filter(Fact.HandedOver.class::isInstance)
                        .filter(other -> !struckOut.contains(other.stamp().id()))
                        .noneMatch(other -> other.stamp().seq() > lapsed
                                && other.stamp().seq() < handoff.stamp().seq()));
    }

    private Optional<Instant> firstAfter(Instant moment, java.util.function.Predicate<Fact> wanted) {
        return live.stream()
                .filter(wanted)
                .map(fact -> fact.stamp().effectiveAt())
                .filter(at -> at.isAfter(moment))
                .min(Comparator.naturalOrder());
    }

    private static boolean bringsItIn(Fact fact) {
        if (fact instanceof Fact.PartChanged change) {
            return change.source() == Fact.Source.SHOP;
        } else if (fact instanceof Fact.Inspected inspection) {
            return inspection.source() == Fact.Source.SHOP;
        } else if (fact instanceof Fact.Flashed flash) {
            return flash.source() == Fact.Source.SHOP;
        } else if (fact instanceof Fact.ReadBack check) {
            return check.source() == Fact.Source.SHOP;
        }
        return fact instanceof Fact.Arrived;
    }
}
