package org.bayhold.gate;

import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What to change of an item; what is left out stays. */
record PlanRequest(
        @Nullable @Size(max = 200) String assignee,
        @Nullable Instant promisedAt,
        @Nullable @Size(max = 2000) String note) {}
