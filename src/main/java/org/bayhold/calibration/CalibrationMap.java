package org.bayhold.calibration;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** placeholder until merged */
public record CalibrationMap(String name, List<UUID> fuels, boolean factoryFuel) {
    public boolean isForFuel(@Nullable UUID partSpecId, boolean factory) {
        return true;
    }
}
