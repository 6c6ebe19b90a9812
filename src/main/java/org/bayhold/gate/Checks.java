package org.bayhold.gate;

import static org.bayhold.gate.Check.CALIBRATION_IN_FORCE;
import static org.bayhold.gate.Check.CUSTOMER_ACKNOWLEDGED;
import static org.bayhold.gate.Check.DRIVE_LOG_PASSED;
import static org.bayhold.gate.Check.FLASH_AFTER_LAST_CHANGE;
import static org.bayhold.gate.Check.FLASH_COMPLETED;
import static org.bayhold.gate.Check.PARTS_COVERED;
import static org.bayhold.gate.Check.PARTS_KNOWN;
import static org.bayhold.gate.Check.RETUNE_CLEARED;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.bayhold.buildsheet.BuildLine;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Correction;

/** The checks, each a function of the question alone. docs/rules.md, "Gate checks". */
final class Checks {
    /** A check with the code that it answers under. */
    record Named(Check code, Function<Question, CheckResult> check) {}

    static final List<Named> ALL = List.of(
            new Named(PARTS_KNOWN, Checks::partsKnown),
            new Named(FLASH_COMPLETED, Checks::flashCompleted),
            new Named(FLASH_AFTER_LAST_CHANGE, Checks::flashAfterLastChange),
            new Named(CALIBRATION_IN_FORCE, Checks::calibrationInForce),
            new Named(PARTS_COVERED, Checks::partsCovered),
            new Named(Check.READ_BACK_MATCHES, ReadBackCheck::matches),
            new Named(Check.NO_RELATED_TROUBLE_CODES, TroubleCodeCheck::noneRelated),
            new Named(DRIVE_LOG_PASSED, DriveLogCheck::passed),
            new Named(RETUNE_CLEARED, Checks::retuneCleared),
            new Named(CUSTOMER_ACKNOWLEDGED, Checks::customerAcknowledged));

    /** Those that tell whether the calibration in the car matches it, the cheap ones first. */
    static final List<Named> MATCHING = List.of(
            new Named(FLASH_AFTER_LAST_CHANGE, Checks::flashAfterLastChange),
            new Named(FLASH_COMPLETED, Checks::flashCompleted),
            new Named(PARTS_KNOWN, Checks::partsKnown),
            new Named(CALIBRATION_IN_FORCE, Checks::calibrationInForce),
            new Named(PARTS_COVERED, Checks::partsCovered));

    /** With which version of the rules each check came that was not there from the beginning. */
    private static final Map<Check, Integer> LATER = Map.of(Check.NO_RELATED_TROUBLE_CODES, 2);

    /** The version of the rules from which on there are drive logs; before, the check asked for nothing. */
    private static final int DRIVE_LOGS = 3;

    private Checks() {}

    /** The checks of one version of the rules, so that a decision is replayed under those that made it (rule 14). */
    static List<Named> of(int rules) {
        return ALL.stream()
                .filter(check -> LATER.getOrDefault(check.code(), 1) <= rules)
                .map(check -> rules < DRIVE_LOGS ? beforeDriveLogs(check) : check)
                .toList();
    }

    private static Named beforeDriveLogs(Named check) {
        return check.code() == DRIVE_LOG_PASSED
                ? new Named(
                        DRIVE_LOG_PASSED, question -> CheckResult.notRequired(DRIVE_LOG_PASSED, Reason.NOT_ASKED_FOR))
                : check;
    }

    /** No place with an effect is unknown. */
    static CheckResult partsKnown(Question question) {
        List<BuildLine> unknown = question.car().lines().stream()
                .filter(BuildLine::hasEffect)
                .filter(line -> line.fitted().state() == Fitted.State.UNKNOWN)
                .toList();
        return unknown.isEmpty()
                ? CheckResult.pass(PARTS_KNOWN, Reason.ALL_PARTS_KNOWN)
                : CheckResult.fail(
                        PARTS_KNOWN,
                        Reason.PART_UNKNOWN,
                        unknown.stream()
                                .flatMap(line -> Optional.ofNullable(line.recordId()).stream())
                                .distinct()
                                .toList());
    }

    /** The last flash was completed, or the revision was found by an ECU check, or the car is as its maker left it. */
    static CheckResult flashCompleted(Question question) {
        if (question.isFactoryThroughout()) {
            return CheckResult.pass(FLASH_COMPLETED, Reason.FACTORY_THROUGHOUT);
        }
        return question.car().inEcu().match(new InEcu.Cases<>() {
            @Override
            public CheckResult factory(InEcu.Factory in) {
                return CheckResult.fail(FLASH_COMPLETED, Reason.NEVER_FLASHED);
            }

            @Override
            public CheckResult unknown(InEcu.Unknown in) {
                return CheckResult.fail(FLASH_COMPLETED, Reason.CALIBRATION_UNKNOWN);
            }

            @Override
            public CheckResult flashed(InEcu.Flashed in) {
                return CheckResult.pass(FLASH_COMPLETED, Reason.FLASHED, in.recordId());
            }

            @Override
            public CheckResult found(InEcu.Found in) {
                return CheckResult.pass(FLASH_COMPLETED, Reason.FOUND_BY_READ_BACK, in.recordId());
            }

            @Override
            public CheckResult notOurs(InEcu.NotOurs in) {
                return CheckResult.pass(FLASH_COMPLETED, Reason.FLASHED, in.recordId());
            }

            @Override
            public CheckResult failed(InEcu.Failed in) {
                return CheckResult.fail(FLASH_COMPLETED, Reason.LAST_FLASH_FAILED, in.recordId());
            }
        });
    }

    /** Every change is strictly earlier than the last flash, or was on record when its part was signed off as covered. */
    static CheckResult flashAfterLastChange(Question question) {
        List<CarState.Change> since = changesSinceFlash(question.car());
        if (since.isEmpty()) {
            return CheckResult.pass(FLASH_AFTER_LAST_CHANGE, Reason.NO_CHANGE_SINCE);
        }
        List<UUID> open = since.stream()
                .filter(change -> !isSignedOff(change, question.car().clearances()))
                .map(CarState.Change::recordId)
                .distinct()
                .toList();
        return open.isEmpty()
                ? CheckResult.pass(FLASH_AFTER_LAST_CHANGE, Reason.CHANGE_SIGNED_OFF)
                : CheckResult.fail(FLASH_AFTER_LAST_CHANGE, Reason.CHANGED_SINCE, open);
    }

    /** The changes that the last flash cannot have been made for; a tie counts against release (rule 9). */
    static List<CarState.Change> changesSinceFlash(CarState car) {
        Optional<Instant> flashedAt = car.flashedAt();
        return car.changes().stream()
                .filter(change -> flashedAt.isEmpty() || !change.effectiveAt().isBefore(flashedAt.get()))
                .toList();
    }

    static boolean isSignedOff(CarState.Change change, List<Fact.Cleared> clearances) {
        return clearances.stream()
                .filter(cleared -> cleared.basis() == Fact.ClearanceBasis.STILL_COVERED)
                .anyMatch(
                        cleared -> change.recordedAt().isBefore(cleared.stamp().recordedAt())
                                && change.effectiveAt().isBefore(cleared.stamp().effectiveAt()));
    }

    /** The flashed revision is not withdrawn, and its purpose is not TRANSFER. */
    static CheckResult calibrationInForce(Question question) {
        if (question.isFactoryThroughout()) {
            return CheckResult.notRequired(CALIBRATION_IN_FORCE, Reason.FACTORY_THROUGHOUT);
        }
        CarState car = question.car();
        Optional<Revision> revision = car.revision();
        if (revision.isEmpty()) {
            Reason reason = car.inEcu() instanceof InEcu.NotOurs ? Reason.FILE_NOT_OURS : Reason.NO_REVISION;
            return CheckResult.fail(CALIBRATION_IN_FORCE, reason);
        }
        if (revision.get().isWithdrawn(car.effectiveAt(), car.knownAt())) {
            return CheckResult.fail(
                    CALIBRATION_IN_FORCE, Reason.WITHDRAWN, revision.get().id());
        }
        return revision.get().purpose() == Purpose.TRANSFER
                ? CheckResult.fail(
                        CALIBRATION_IN_FORCE,
                        Reason.TRANSFER_ONLY,
                        revision.get().id())
                : CheckResult.pass(
                        CALIBRATION_IN_FORCE, Reason.IN_FORCE, revision.get().id());
    }

    /** The flashed revision covers every place. */
    static CheckResult partsCovered(Question question) {
        if (question.isFactoryThroughout()) {
            return CheckResult.pass(PARTS_COVERED, Reason.FACTORY_THROUGHOUT);
        }
        Optional<Revision> revision = question.car().revision();
        if (revision.isEmpty()) {
            return CheckResult.fail(PARTS_COVERED, Reason.WRITTEN_FOR_NO_PART);
        }
        if (question.isForOtherHardware(revision.get())) {
            return CheckResult.fail(
                    PARTS_COVERED, Reason.OTHER_ECU_HARDWARE, revision.get().id());
        }
        List<Coverage.Gap> gaps = question.gaps();
        return gaps.isEmpty()
                ? CheckResult.pass(PARTS_COVERED, Reason.COVERED, revision.get().id())
                : CheckResult.fail(
                        PARTS_COVERED, Reason.NOT_COVERED, revision.get().id());
    }

    /** No retune item is open, and none is about to be. */
    static CheckResult retuneCleared(Question question) {
        Optional<CarState.OpenItem> item = question.car().openItem();
        if (item.isPresent()) {
            return CheckResult.fail(
                    RETUNE_CLEARED, Reason.RETUNE_OPEN, item.get().id());
        }
        return question.unansweredCorrections().isEmpty()
                ? CheckResult.pass(RETUNE_CLEARED, Reason.NOTHING_OPEN)
                : CheckResult.fail(
                        RETUNE_CLEARED,
                        Reason.PART_SPEC_CORRECTED,
                        question.unansweredCorrections().stream()
                                .map(Correction::id)
                                .toList());
    }

    /** Since the previous handover the customer has acknowledged the risk and the use of the car. */
    static CheckResult customerAcknowledged(Question question) {
        if (question.isFactoryThroughout()) {
            return CheckResult.notRequired(CUSTOMER_ACKNOWLEDGED, Reason.FACTORY_THROUGHOUT);
        }
        if (!question.policy().acknowledgementRequired()) {
            return CheckResult.notRequired(CUSTOMER_ACKNOWLEDGED, Reason.NOT_ASKED_FOR);
        }
        CarState car = question.car();
        Optional<Instant> previous = car.handoffs().stream()
                .map(handoff -> handoff.stamp().effectiveAt())
                .filter(at -> at.isBefore(car.effectiveAt()))
                .reduce((earlier, later) -> later);
        return car.acknowledgements().stream()
                .map(Fact.Acknowledged::stamp)
                .filter(stamp -> previous.isEmpty() || stamp.effectiveAt().isAfter(previous.get()))
                .reduce((earlier, later) -> later)
                .map(stamp -> CheckResult.pass(CUSTOMER_ACKNOWLEDGED, Reason.ACKNOWLEDGED, stamp.id()))
                .orElseGet(() -> CheckResult.fail(CUSTOMER_ACKNOWLEDGED, Reason.NOT_ACKNOWLEDGED));
    }
}
