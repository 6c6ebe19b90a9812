package org.bayhold.gate;

import static org.bayhold.buildsheet.Cause.Code.EVIDENCE_VOIDED;
import static org.bayhold.buildsheet.Cause.Code.FLASH_DOES_NOT_COVER;
import static org.bayhold.buildsheet.Cause.Code.FLASH_FAILED;
import static org.bayhold.buildsheet.Cause.Code.FLASH_NOT_OURS;
import static org.bayhold.buildsheet.Cause.Code.INSPECTION_CONTRADICTS;
import static org.bayhold.buildsheet.Cause.Code.LATE_RECORD;
import static org.bayhold.buildsheet.Cause.Code.PART_CHANGED;
import static org.bayhold.buildsheet.Cause.Code.READ_BACK_DIFFERS;
import static org.bayhold.buildsheet.Cause.Code.REVISION_WITHDRAWN;
import static org.bayhold.buildsheet.Cause.Code.TRANSFER_FLASHED;
import static org.bayhold.buildsheet.Cause.Code.VOIDING_LEFT_UNMATCHED;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.InEcu;

/** Why a new fact opens a retune item, or joins the open one. docs/rules.md, rules 1, 2 and 7. Pure. */
final class Causes {
    private Causes() {}

    /**
     * The causes that {@code fact} brings.
     *
     * @param now the decision with the fact on record
     * @param facts the whole record, the fact with it
     */
    static List<Cause> of(Fact fact, Decision now, List<Fact> facts) {
        List<Cause> causes = new ArrayList<>();
        CarState car = now.car();
        if (fact instanceof Fact.PartChanged) {
            change(fact, PART_CHANGED, now).ifPresent(causes::add);
        } else if (fact instanceof Fact.Inspected) {
            change(fact, INSPECTION_CONTRADICTS, now).ifPresent(causes::add);
        } else if (fact instanceof Fact.Flashed) {
            causes.addAll(flash(fact, now));
        } else if (fact instanceof Fact.ReadBack check && ReadBackCheck.differs(car, check)) {
            causes.add(cause(READ_BACK_DIFFERS, fact));
        } else if (fact instanceof Fact.Voided voided) {
            evidence(voided, facts).ifPresent(causes::add);
        }
        causes.addAll(inspectionsTurned(fact, now, facts));
        if (causes.isEmpty() && car.openItem().isEmpty() && isUnmatched(now)) {
            causes.add(cause(fact instanceof Fact.Voided ? VOIDING_LEFT_UNMATCHED : LATE_RECORD, fact));
        }
        return causes;
    }

    /** As known now the car does not run a calibration that matches it. */
    static boolean isUnmatched(Decision decision) {
        return decision.failed().stream().anyMatch(check -> isAboutTheMatch(check));
    }

    /** It fails on a car without a matching calibration; paper and sign-off do not make one (rule 13). */
    static boolean isAboutTheMatch(CheckResult failed) {
        return Checks.MATCHING.stream().anyMatch(check -> check.code() == failed.code())
                || failed.reason() == Reason.READ_BACK_DIFFERS;
    }

    /** After the last flash any change is a cause; before it, only one that makes the flash wrong. */
    private static Optional<Cause> change(Fact fact, Cause.Code code, Decision now) {
        CarState car = now.car();
        UUID id = fact.stamp().id();
        if (car.changes().stream().noneMatch(change -> change.recordId().equals(id))) {
            return Optional.empty();
        }
        Optional<Instant> flashedAt = car.flashedAt();
        if (flashedAt.isEmpty() || !fact.stamp().effectiveAt().isBefore(flashedAt.get())) {
            return Optional.of(cause(code, fact));
        }
        return now.fails(Check.PARTS_COVERED) || now.fails(Check.PARTS_KNOWN)
                ? Optional.of(cause(LATE_RECORD, fact))
                : Optional.empty();
    }

    /** A late record can turn an earlier inspection that confirmed the record into one that contradicts it (rule 10). */
    private static List<Cause> inspectionsTurned(Fact fact, Decision now, List<Fact> facts) {
        CarState car = now.car();
        Set<UUID> told = facts.stream()
                .flatMap(f -> told(f).stream())
                .map(Cause::recordId)
                .collect(Collectors.toSet());
        Set<UUID> contradicting = Checks.changesSinceFlash(car).stream()
                .filter(change -> !Checks.isSignedOff(change, car.clearances()))
                .map(CarState.Change::recordId)
                .filter(id -> !id.equals(fact.stamp().id()) && !told.contains(id))
                .collect(Collectors.toSet());
        return facts.stream()
                .filter(Fact.Inspected.class::isInstance)
                .filter(inspection -> contradicting.contains(inspection.stamp().id()))
                .map(inspection -> cause(INSPECTION_CONTRADICTS, inspection))
                .toList();
    }

    private static List<Cause> flash(Fact fact, Decision now) {
        List<Cause> causes = new ArrayList<>();
        UUID id = fact.stamp().id();
        InEcu inEcu = now.car().inEcu();
        if (inEcu instanceof InEcu.Failed failed && failed.recordId().equals(id)) {
            causes.add(cause(FLASH_FAILED, fact));
        } else if (inEcu instanceof InEcu.NotOurs notOurs && notOurs.recordId().equals(id)) {
            causes.add(cause(FLASH_NOT_OURS, fact));
        } else if (inEcu instanceof InEcu.Flashed flashed && flashed.recordId().equals(id)) {
            now.failed().forEach(check -> {
                switch (check.reason()) {
                    case NOT_COVERED, OTHER_ECU_HARDWARE -> causes.add(cause(FLASH_DOES_NOT_COVER, fact));
                    case TRANSFER_ONLY -> causes.add(cause(TRANSFER_FLASHED, fact));
                    case WITHDRAWN -> causes.add(cause(REVISION_WITHDRAWN, fact));
                    default -> {}
                }
            });
        }
        return causes;
    }

    /** A sign-off was struck out, or a record that one rests on; it held from when that record did. */
    private static Optional<Cause> evidence(Fact.Voided voided, List<Fact> facts) {
        UUID target = voided.targetId();
        boolean rested = facts.stream()
                .filter(Fact.Cleared.class::isInstance)
                .map(Fact.Cleared.class::cast)
                .anyMatch(cleared -> cleared.stamp().id().equals(target)
                        || cleared.evidence().contains(target));
        return facts.stream()
                .filter(fact -> rested && fact.stamp().id().equals(target))
                .findFirst()
                .map(fact -> new Cause(
                        EVIDENCE_VOIDED, voided.stamp().id(), fact.stamp().effectiveAt()));
    }

    /** The causes that a fact of a retune item brings. */
    static List<Cause> told(Fact fact) {
        if (fact instanceof Fact.RetuneOpened opened) {
            return opened.causes();
        }
        return fact instanceof Fact.RetuneJoined joined ? joined.causes() : List.of();
    }

    private static Cause cause(Cause.Code code, Fact fact) {
        return new Cause(code, fact.stamp().id(), fact.stamp().effectiveAt());
    }
}
