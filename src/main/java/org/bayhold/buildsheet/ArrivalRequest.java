package org.bayhold.buildsheet;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** An arrival to record. */
record ArrivalRequest(
        @Nullable Instant effectiveAt,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @Nullable @Size(max = 2000) String note)
        implements FactRequest {}
