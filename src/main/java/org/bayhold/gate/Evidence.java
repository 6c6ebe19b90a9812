package org.bayhold.gate;

import static org.bayhold.gate.Check.FLASH_COMPLETED;
import static org.bayhold.gate.Check.READ_BACK_MATCHES;
import static org.bayhold.gate.Check.SECOND_PERSON_SIGNED;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.InEcu;

/** What a sign-off must rest on, for each of its two bases. docs/rules.md, rule 4. */
final class Evidence {
    private Evidence() {}

    /** Every check of the sign-off, passed or not. */
    static List<CheckResult> of(Question question, Fact.ClearanceBasis basis, UUID signer) {
        List<CheckResult> checks = new ArrayList<>();
        checks.add(Checks.partsKnown(question));
        switch (basis) {
            case FLASHED -> {
                checks.add(flashed(question));
                checks.add(afterLastChange(question));
            }
            case STILL_COVERED -> checks.add(Checks.flashCompleted(question));
        }
        checks.add(Checks.calibrationInForce(question));
        checks.add(Checks.partsCovered(question));
        checks.add(
                switch (basis) {
                    case FLASHED -> ReadBackCheck.matches(question);
                    case STILL_COVERED -> readBackAfterLastChange(question);
                });
        checks.add(DriveLogCheck.passed(question));
        checks.add(secondPerson(question, signer));
        return checks;
    }

    /** The records that a passed sign-off rests on. */
    static List<UUID> records(CarState car, List<CheckResult> checks) {
        List<UUID> records = new ArrayList<>();
        if (car.inEcu() instanceof InEcu.Flashed flashed) {
            records.add(flashed.recordId());
        }
        checks.stream()
                .filter(check -> check.code() == READ_BACK_MATCHES || check.code() == Check.DRIVE_LOG_PASSED)
                .filter(check -> check.outcome() == Outcome.PASS)
                .flatMap(check -> check.records().stream())
                .forEach(records::add);
        return records.stream().distinct().toList();
    }

    private static CheckResult flashed(Question question) {
        return question.car().inEcu() instanceof InEcu.Flashed flashed
                ? CheckResult.pass(FLASH_COMPLETED, Reason.FLASHED, flashed.recordId())
                : failedFlash(Checks.flashCompleted(question));
    }

    private static CheckResult failedFlash(CheckResult usual) {
        return usual.failed() ? usual : CheckResult.fail(FLASH_COMPLETED, Reason.NEVER_FLASHED);
    }

    /** Here an earlier sign-off does not help: the flash itself must be the later one. */
    private static CheckResult afterLastChange(Question question) {
        List<UUID> since = Checks.changesSinceFlash(question.car()).stream()
                .map(CarState.Change::recordId)
                .distinct()
                .toList();
        return since.isEmpty()
                ? CheckResult.pass(Check.FLASH_AFTER_LAST_CHANGE, Reason.NO_CHANGE_SINCE)
                : CheckResult.fail(Check.FLASH_AFTER_LAST_CHANGE, Reason.CHANGED_SINCE, since);
    }

    /**
     * An ECU check strictly after the last change that shows what the record says; on a car that was never flashed it is
     * asked for whatever policy says (rule 10).
     */
    private static CheckResult readBackAfterLastChange(Question question) {
        CarState car = question.car();
        boolean neverFlashed = car.inEcu() instanceof InEcu.Factory;
        CheckResult usual = ReadBackCheck.matches(question);
        if (usual.failed() || !(neverFlashed || question.policy().readBackRequired())) {
            return usual;
        }
        Optional<Fact.ReadBack> newest = ReadBackCheck.newestSinceFlash(car);
        Optional<Instant> lastChange =
                car.changes().stream().map(CarState.Change::effectiveAt).max(Instant::compareTo);
        if (newest.isEmpty() || car.expectedReading().isEmpty()) {
            return CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_MISSING);
        }
        Fact.ReadBack check = newest.get();
        UUID id = check.stamp().id();
        if (!check.reading().shows(car.expectedReading().get())) {
            return CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_NOT_COMPARABLE, id);
        }
        return lastChange.filter(at -> !check.stamp().effectiveAt().isAfter(at)).isPresent()
                ? CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_BEFORE_CHANGE, id)
                : CheckResult.pass(READ_BACK_MATCHES, Reason.READ_BACK_SHOWS_IT, id);
    }

    private static CheckResult secondPerson(Question question, UUID signer) {
        if (!question.policy().secondPersonRequired()) {
            return CheckResult.notRequired(SECOND_PERSON_SIGNED, Reason.NOT_ASKED_FOR);
        }
        boolean same = question.car().inEcu() instanceof InEcu.Flashed flashed
                && flashed.flashedBy().equals(signer);
        return same
                ? CheckResult.fail(SECOND_PERSON_SIGNED, Reason.SAME_PERSON)
                : CheckResult.pass(SECOND_PERSON_SIGNED, Reason.ANOTHER_PERSON);
    }
}
