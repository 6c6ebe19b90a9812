package org.bayhold.buildsheet;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What every request to record a fact may say. */
interface FactRequest {
    @Nullable Instant effectiveAt();

    default @Nullable Integer odometerKm() {
        return null;
    }
}
