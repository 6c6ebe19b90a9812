package org.bayhold.vehicle;

import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** Plate, owner or engine changed; what is null stays as it was. */
record VehicleAmended(
        @Nullable Personal plate,
        boolean plateRemoved,
        @Nullable Owner owner,
        @Nullable String engine,
        @Nullable Integer displacementCc,
        @Nullable Integer cylinders) {
    /** It says which plate the car has, or that it has none. */
    boolean namesPlate() {
        return plate != null || plateRemoved;
    }
}
