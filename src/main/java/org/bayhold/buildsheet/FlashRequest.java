package org.bayhold.buildsheet;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.buildsheet.Fact.Outcome;
import org.jspecify.annotations.Nullable;

/** A flash to record. */
record FlashRequest(
        @Nullable UUID calibrationId,
        @NotNull Outcome outcome,
        Fact.@Nullable Source source,
        @Nullable Boolean adaptationsReset,
        @Nullable Instant effectiveAt,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @Nullable @Size(max = 200) String performedBy,
        @Nullable @Size(max = 2000) String note)
        implements FactRequest {}
