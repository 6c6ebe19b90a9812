package org.bayhold.gate;

import java.util.List;
import java.util.Objects;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** The maps of the calibration that the owner can choose with the fuel that is in the tank. docs/rules.md, "Maps". */
final class Maps {
    private Maps() {}

    /** @param name null for the only map of a calibration that names none */
    record Asked(@Nullable String name) {
        boolean isNamed(@Nullable String map) {
            return Objects.equals(name, map);
        }
    }

    /** Empty where the calibration has maps, and none for this fuel. */
    static List<Asked> askedAbout(CarState car) {
        List<CalibrationMap> maps = car.revision().map(Revision::maps).orElse(List.of());
        if (maps.isEmpty()) {
            return List.of(new Asked(null));
        }
        Fitted fuel = car.fittedAt(Place.of(Category.FUEL));
        return maps.stream()
                .filter(map -> map.isForFuel(fuel.partSpecId(), fuel.state() == Fitted.State.FACTORY))
                .map(map -> new Asked(map.name()))
                .toList();
    }
}
