package org.bayhold.vehicle;

import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** A car was taken on; the first entry of its chain. */
record VehicleRegistered(
        @Nullable String vin,
        @Nullable String frameNumber,
        String description,
        @Nullable String engine,
        @Nullable Integer displacementCc,
        @Nullable Integer cylinders,
        String ecuHardware,
        Baseline baseline,
        @Nullable String factoryCalid,
        @Nullable String factoryCvn,
        @Nullable Integer odometerKm,
        @Nullable Personal plate,
        Owner owner) {}
