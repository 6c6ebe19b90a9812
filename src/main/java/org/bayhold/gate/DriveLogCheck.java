package org.bayhold.gate;

import static org.bayhold.gate.Check.DRIVE_LOG_PASSED;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.Revision;
import org.bayhold.drivelog.Verdict;
import org.jspecify.annotations.Nullable;

/** Whether a drive after the flash showed that its calibration is right, for each map that the owner can choose. */
final class DriveLogCheck {
    private DriveLogCheck() {}

    /**
     * Of the drives of one map that came to a verdict the newest counts. One that failed holds the car whatever policy says;
     * one that showed too little is none. The rules are those of spark ignition.
     */
    static CheckResult passed(Question question) {
        if (question.isFactoryThroughout()) {
            return CheckResult.notRequired(DRIVE_LOG_PASSED, Reason.FACTORY_THROUGHOUT);
        }
        CarState car = question.car();
        if (car.revision().filter(Revision::compressionIgnition).isPresent()) {
            return CheckResult.notRequired(DRIVE_LOG_PASSED, Reason.NO_SPARK_IGNITION);
        }
        List<DriveLogged> since =
                car.driveLogs().stream().filter(log -> isSinceFlash(car, log)).toList();
        List<DriveLogged> ofThis = since.stream()
                .filter(log -> Objects.equals(log.calibrationId(), inEcu(car)))
                .toList();
        List<CalibrationMap> maps = Maps.askedAbout(car);
        List<DriveLogged> newest =
                maps.stream().flatMap(map -> newest(car, ofThis, map).stream()).toList();
        List<DriveLogged> failed =
                newest.stream().filter(log -> log.verdict() == Verdict.FAIL).toList();
        if (!failed.isEmpty()) {
            return CheckResult.fail(DRIVE_LOG_PASSED, Reason.DRIVE_LOG_FAILED, records(failed));
        }
        if (!question.policy().driveLogRequired()) {
            return CheckResult.notRequired(DRIVE_LOG_PASSED, Reason.NOT_ASKED_FOR);
        }
        if (!maps.isEmpty() && newest.size() == maps.size()) {
            return new CheckResult(DRIVE_LOG_PASSED, Outcome.PASS, Reason.DRIVE_LOG_PASSES, records(newest));
        }
        return missing(since, ofThis, newest);
    }

    private static CheckResult missing(List<DriveLogged> since, List<DriveLogged> ofThis, List<DriveLogged> newest) {
        if (!newest.isEmpty()) {
            return CheckResult.fail(DRIVE_LOG_PASSED, Reason.DRIVE_LOG_OF_EACH_MAP, records(newest));
        }
        List<DriveLogged> insufficient = ofThis.stream()
                .filter(log -> log.verdict() == Verdict.INSUFFICIENT)
                .toList();
        if (!insufficient.isEmpty()) {
            return CheckResult.fail(
                    DRIVE_LOG_PASSED,
                    Reason.DRIVE_LOG_INSUFFICIENT,
                    records(List.of(insufficient.get(insufficient.size() - 1))));
        }
        return since.size() > ofThis.size()
                ? CheckResult.fail(DRIVE_LOG_PASSED, Reason.DRIVE_LOG_OF_ANOTHER, records(since))
                : CheckResult.fail(DRIVE_LOG_PASSED, Reason.DRIVE_LOG_MISSING);
    }

    /** One at the very time of the flash proves nothing, and counts only against release (rule 9). */
    private static Optional<DriveLogged> newest(CarState car, List<DriveLogged> logs, CalibrationMap map) {
        return logs.stream()
                .filter(log -> map.isNamed(log.map()))
                .filter(log -> log.verdict() != Verdict.INSUFFICIENT)
                .filter(log -> log.verdict() == Verdict.FAIL || isAfterFlash(car, log))
                .reduce((earlier, later) -> later);
    }

    private static @Nullable UUID inEcu(CarState car) {
        return car.revision().map(Revision::id).orElse(null);
    }

    private static boolean isSinceFlash(CarState car, DriveLogged log) {
        return car.flashedAt()
                .filter(at -> log.stamp().effectiveAt().isBefore(at))
                .isEmpty();
    }

    private static boolean isAfterFlash(CarState car, DriveLogged log) {
        return car.flashedAt()
                .filter(at -> !log.stamp().effectiveAt().isAfter(at))
                .isEmpty();
    }

    /** The judgements, and the drives that they are of: striking out either takes the ground away. */
    private static List<UUID> records(List<DriveLogged> logs) {
        return logs.stream()
                .flatMap(log -> Stream.of(log.stamp().id(), log.drive()))
                .distinct()
                .toList();
    }
}
