package org.bayhold.vehicle;

import com.fasterxml.jackson.annotation.JsonAlias;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What to change of a car; what is left out stays, a blank plate takes the plate off. */
record VehiclePatch(
        @Nullable @Size(max = 20) String plate,
        @JsonAlias("owner") @Valid VehicleRequest.@Nullable CustomerRequest customer,
        @Nullable @Size(max = 100) String engine,
        @Nullable @Min(50) @Max(30_000) Integer displacementCc,
        @Nullable @Min(1) @Max(24) Integer cylinders,
        @Nullable Instant effectiveAt) {}
