package org.bayhold.buildsheet;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fitted.State;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/** An inspection to record: what was found, place by place. */
record InspectionRequest(
        @NotEmpty @Size(max = 200) List<@Valid @NotNull Line> lines,
        @Nullable Instant effectiveAt,
        Fact.@Nullable Source source,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @Nullable @Size(max = 2000) String note)
        implements FactRequest {

    /** What was found at one place. */
    record Line(
            @NotNull Category category,
            @Nullable @Size(max = 60) String position,
            @NotNull State state,
            @Nullable UUID partSpecId) {}
}
