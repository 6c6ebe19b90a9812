package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A recorded acknowledgement. */
record AcknowledgementView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        Fact.Usage usage,
        @Nullable String signedBy,
        @Nullable String text,
        List<String> warnings) {}
