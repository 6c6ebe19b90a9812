package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A recorded arrival. */
record ArrivalView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        @Nullable Integer odometerKm,
        @Nullable String note,
        List<String> warnings) {}
