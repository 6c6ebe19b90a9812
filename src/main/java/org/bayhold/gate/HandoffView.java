package org.bayhold.gate;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.jspecify.annotations.Nullable;

/**
 * A handover as answered.
 *
 * @param gate the whole decision as it stood then
 */
record HandoffView(
        UUID id,
        UUID vehicleId,
        Fact.HandoffBasis basis,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        @Nullable Integer odometerKm,
        @Nullable ReleaseView exception,
        boolean voided,
        DecisionView gate,
        String certificateUrl) {

    /** A manager's release of a car on HOLD. */
    record ReleaseView(
            @Nullable String reason,
            Fact.Travel travel,
            @Nullable String acknowledgedBy,
            @Nullable String limitations,
            @Nullable Instant returnBy,
            @Nullable String secondSigner) {}
}
