package org.bayhold.vehicle;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A car as answered.
 *
 * @param ecuHardware the hardware number now: as registered, then as each ECU change says
 * @param warnings what is odd and was recorded all the same
 * @param version the ETag
 */
public record VehicleView(
        UUID id,
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
        @Nullable String plate,
        @Nullable Integer odometerKm,
        Customer customer,
        Instant registeredAt,
        List<String> warnings,
        long version) {

    /** The owner; null where nothing is on record, it was erased, or the reader's role does not see contact data. */
    public record Customer(
            @Nullable String name,
            @Nullable String phone,
            @Nullable String email) {}
}
