package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Cause;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * A retune item as answered.
 *
 * @param basis FLASHED, STILL_COVERED or CAUSES_VOIDED; null while open
 * @param version the ETag
 */
record RetuneItemView(
        UUID id,
        UUID vehicleId,
        Status status,
        Risk risk,
        Instant openedAt,
        List<CauseView> causes,
        @Nullable Instant clearedAt,
        @Nullable String basis,
        @Nullable String assignee,
        @Nullable Instant promisedAt,
        @Nullable String note,
        long version) {

    /** Whether the item still holds the car. */
    enum Status {
        OPEN,
        CLEARED
    }

    /** Why the car needs a retune, and the record it comes from. */
    record CauseView(Cause.Code code, String sentence, UUID recordId, Instant effectiveAt, Instant recordedAt) {}
}
