package org.bayhold.vehicle;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** A car to register. */
record VehicleRequest(
        @Nullable String vin,
        @Nullable @Size(max = 40) String frameNumber,
        @NotBlank @Size(max = 200) String description,
        @Nullable @Size(max = 100) String engine,
        @Nullable @Min(50) @Max(30_000) Integer displacementCc,
        @Nullable @Min(1) @Max(24) Integer cylinders,
        @NotBlank @Size(max = 64) String ecuHardware,
        @Nullable @Size(max = 20) String plate,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @NotNull @Valid CustomerRequest customer,
        @NotNull Baseline baseline,
        @Nullable @Size(min = 1, max = 64) String factoryCalid,
        @Nullable @Size(min = 1, max = 64) String factoryCvn) {

    /** Whose car it is. */
    record CustomerRequest(
            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 60) String phone,
            @Nullable @Size(max = 254) String email) {}
}
