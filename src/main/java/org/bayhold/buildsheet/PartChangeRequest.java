package org.bayhold.buildsheet;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fact.Source;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/** A part change to record. */
record PartChangeRequest(
        @NotNull Category category,
        @Nullable @Size(max = 60) String position,
        @NotNull Action action,
        @Nullable UUID partSpecId,
        @Nullable @Size(max = 100) String serial,
        @Nullable @Size(max = 64) String ecuHardware,
        @Nullable Instant effectiveAt,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @NotNull Source source,
        @Nullable @Size(max = 200) String performedBy,
        @Nullable @Size(max = 2000) String note)
        implements FactRequest {}
