package org.bayhold.gate;

import static org.bayhold.gate.Check.READ_BACK_MATCHES;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.obd.Reading;

/** Whether the ECU itself reports what the record says is in it. */
final class ReadBackCheck {
    private ReadBackCheck() {}

    /**
     * The newest ECU check after the flash shows the flashed revision, and is no older than policy allows. One that
     * differs fails whatever policy says; on a car that is factory throughout nothing more is asked.
     */
    static CheckResult matches(Question question) {
        CarState car = question.car();
        Optional<Fact.ReadBack> newest = newestSinceFlash(car);
        Optional<Reading> expected = car.expectedReading();
        if (newest.isPresent() && expected.isPresent() && newest.get().reading().differsFrom(expected.get())) {
            return CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_DIFFERS, id(newest.get()));
        }
        if (question.isFactoryThroughout()) {
            return CheckResult.notRequired(READ_BACK_MATCHES, Reason.FACTORY_THROUGHOUT);
        }
        if (!question.policy().readBackRequired()) {
            return CheckResult.notRequired(READ_BACK_MATCHES, Reason.NOT_ASKED_FOR);
        }
        if (newest.isEmpty() || expected.isEmpty() || !countsAsEvidence(car, newest.get())) {
            return CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_MISSING);
        }
        Fact.ReadBack check = newest.get();
        if (!check.reading().shows(expected.get())) {
            return CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_NOT_COMPARABLE, id(check));
        }
        Duration age = Duration.between(check.stamp().effectiveAt(), car.effectiveAt());
        return age.compareTo(Duration.ofHours(question.policy().readBackMaxAgeHours())) > 0
                ? CheckResult.fail(READ_BACK_MATCHES, Reason.READ_BACK_TOO_OLD, id(check))
                : CheckResult.pass(READ_BACK_MATCHES, Reason.READ_BACK_SHOWS_IT, id(check));
    }

    /** Differs from what the record says is in the ECU, and is not older than that. */
    static boolean differs(CarState car, Fact.ReadBack check) {
        return isSinceFlash(car, check)
                && car.expectedReading().filter(check.reading()::differsFrom).isPresent();
    }

    static Optional<Fact.ReadBack> newestSinceFlash(CarState car) {
        return car.readBacks().stream()
                .filter(check -> isSinceFlash(car, check))
                .reduce((earlier, later) -> later);
    }

    static boolean isSinceFlash(CarState car, Fact.ReadBack check) {
        Optional<Instant> flashedAt = car.flashedAt();
        return flashedAt.isEmpty() || !check.stamp().effectiveAt().isBefore(flashedAt.get());
    }

    /** Evidence counts only strictly after what it proves; the check that found a revision is its own proof. */
    static boolean countsAsEvidence(CarState car, Fact.ReadBack check) {
        return car.inEcu() instanceof InEcu.Found
                || car.flashedAt()
                        .filter(at -> !check.stamp().effectiveAt().isAfter(at))
                        .isEmpty();
    }

    private static java.util.UUID id(Fact.ReadBack check) {
        return check.stamp().id();
    }
}
