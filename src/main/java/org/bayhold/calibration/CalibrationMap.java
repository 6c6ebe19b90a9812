package org.bayhold.calibration;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.journal.Text;
import org.jspecify.annotations.Nullable;

/**
 * One of the maps in a calibration file, between which the driver or the ECU selects.
 *
 * @param name empty for the one map of a revision that names none
 * @param fuels the part specs of the fuels that it is for
 * @param factoryFuel it is for the factory's fuel as well; without any fuel and without this it is for every fuel that
 *     the revision covers
 */
public record CalibrationMap(String name, List<UUID> fuels, boolean factoryFuel) {
    /** That of a revision that names no maps. */
    public static final CalibrationMap WITHOUT_A_NAME = new CalibrationMap("", List.of(), false);

    public CalibrationMap {
        fuels = List.copyOf(fuels);
    }

    /**
     * Whether it is for the fuel in the tank. A map for certain fuels is not for one that nobody knows.
     *
     * @param partSpecId the fuel's part spec; null for the factory's fuel, and for one that nobody knows
     * @param factory the tank holds the factory's fuel
     */
    public boolean isForFuel(@Nullable UUID partSpecId, boolean factory) {
        boolean every = fuels.isEmpty() && !factoryFuel;
        return every || (factory && factoryFuel) || (partSpecId != null && fuels.contains(partSpecId));
    }

    /** Whether somebody means it who typed this name ("Street  98" and "street 98" are one); nothing means the map without a name. */
    public boolean isNamed(@Nullable String typed) {
        return Objects.equals(Text.alike(name), Text.alike(typed));
    }
}
