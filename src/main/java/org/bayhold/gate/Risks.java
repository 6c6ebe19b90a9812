package org.bayhold.gate;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Risk;

/**
 * The risk of a car on HOLD. Where what its mismatches do was worked out, that grades them, {@code docs/prediction.md, P17};
 * else their effect groups do.
 */
final class Risks {
    private Risks() {}

    static Risk of(Question question, List<CheckResult> failed) {
        return of(question, failed, question.gaps().stream().map(Risks::of), Set.of());
    }

    /** A change that is a mismatch now was graded with it. */
    static Risk of(Question question, List<CheckResult> failed, Prediction prediction) {
        Set<Place> graded = question.gaps().stream().map(Gap::place).collect(Collectors.toSet());
        return of(question, failed, Stream.of(prediction.risk()), graded);
    }

    private static Risk of(
            Question question, List<CheckResult> failed, Stream<Risk> mismatches, Set<Place> gradedWithThem) {
        Stream<Risk> changes = Checks.changesSinceFlash(question.car()).stream()
                .filter(change -> !gradedWithThem.contains(change.place()))
                .filter(change -> !Checks.isSignedOff(change, question.car().clearances()))
                .map(change -> of(groupOf(question, change)));
        Stream<Risk> software = failed.stream().map(check -> of(question.car(), check));
        return Stream.of(mismatches, changes, software).flatMap(risks -> risks).reduce(Risk.LOW, Risk::or);
    }

    private static EffectGroup groupOf(Question question, CarState.Change change) {
        CarState car = question.car();
        return question.groups().of(change.place().category(), car.effectiveAt(), car.knownAt());
    }

    private static Risk of(Gap gap) {
        boolean unknown = gap.fitted().state() == Fitted.State.UNKNOWN;
        Category category = gap.place().category();
        return unknown && (category == Category.ECU || category == Category.FUEL) ? Risk.EXTREME : of(gap.group());
    }

    private static Risk of(EffectGroup group) {
        return switch (group) {
            case AIR_METERING, FUEL_METERING, BOOST, COMBUSTION, UNSORTED -> Risk.HIGH;
            case EXHAUST, CONTROL -> Risk.MODERATE;
            case DRIVELINE, NO_EFFECT -> Risk.LOW;
        };
    }

    /** Software that nobody can vouch for is as bad as an uncomputable part; missing paper is not. */
    private static Risk of(CarState car, CheckResult failed) {
        return switch (failed.reason()) {
            case LAST_FLASH_FAILED,
                    CALIBRATION_UNKNOWN,
                    WITHDRAWN,
                    TRANSFER_ONLY,
                    FILE_NOT_OURS,
                    OTHER_ECU_HARDWARE,
                    READ_BACK_DIFFERS,
                    RELATED_CODES,
                    CHECK_DID_NOT_RUN -> Risk.HIGH;
            case DRIVE_LOG_FAILED -> shown(car, failed);
            default -> Risk.LOW;
        };
    }

    /** By the drives that failed. */
    private static Risk shown(CarState car, CheckResult failed) {
        return car.driveLogs().stream()
                .filter(log -> failed.records().contains(log.stamp().id()))
                .map(DriveLogged::risk)
                .reduce(Risk.LOW, Risk::or);
    }
}
