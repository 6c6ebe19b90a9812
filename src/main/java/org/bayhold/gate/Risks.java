package org.bayhold.gate;

import java.util.List;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;

/** The risk of a car on HOLD. Until mismatches are computed it comes from the effect groups alone. */
final class Risks {
    private Risks() {}

    static Risk of(Question question, List<CheckResult> failed) {
        Stream<Risk> mismatches = question.gaps().stream().map(Risks::of);
        Stream<Risk> changes = Checks.changesSinceFlash(question.car()).stream()
                .filter(change -> !Checks.isSignedOff(change, question.car().clearances()))
                .map(change -> of(groupOf(question, change)));
        Stream<Risk> software = failed.stream().map(Risks::of);
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
    private static Risk of(CheckResult failed) {
        return switch (failed.reason()) {
            case LAST_FLASH_FAILED,
                    CALIBRATION_UNKNOWN,
                    WITHDRAWN,
                    TRANSFER_ONLY,
                    FILE_NOT_OURS,
                    OTHER_ECU_HARDWARE,
                    READ_BACK_DIFFERS,
                    CHECK_DID_NOT_RUN -> Risk.HIGH;
            default -> Risk.LOW;
        };
    }
}
