package org.bayhold.gate;

import java.util.List;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;

/** The maps of the calibration that the owner can choose with the fuel that is in the tank. docs/rules.md, "Maps". */
final class Maps {
    private Maps() {}

    /** Empty where the calibration has maps, and none for this fuel. */
    static List<CalibrationMap> askedAbout(CarState car) {
        Fitted fuel = car.fittedAt(Place.of(Category.FUEL));
        return car.revision().map(Revision::maps).orElse(List.of(CalibrationMap.WITHOUT_A_NAME)).stream()
                .filter(map -> map.isForFuel(fuel.partSpecId(), fuel.state() == Fitted.State.FACTORY))
                .toList();
    }
}
