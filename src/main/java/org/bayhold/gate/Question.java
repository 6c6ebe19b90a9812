package org.bayhold.gate;

import java.util.List;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Correction;
import org.bayhold.catalog.EffectGroups;

/**
 * What the gate is asked about: a car at one moment, under one policy.
 *
 * @param unansweredCorrections corrections of parts on the car for which no item was opened yet
 */
public record Question(CarState car, Policy policy, EffectGroups groups, List<Correction> unansweredCorrections) {
    public Question {
        unansweredCorrections = List.copyOf(unansweredCorrections);
    }

    /** Factory parts, factory calibration, never flashed: rule 10. */
    boolean isFactoryThroughout() {
        return car.neverFlashed() && car.isFactoryThroughout();
    }

    /** The places where the car is not what its calibration was written for. */
    List<Gap> gaps() {
        return Coverage.gaps(car, car.revision(), groups);
    }

    /** A reported flash may have put a revision into hardware that it was not issued for. */
    boolean isForOtherHardware(Revision revision) {
        return !revision.ecuHardware().equals(car.ecuHardware());
    }
}
