package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A recorded flash. */
record FlashView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        @Nullable UUID calibrationId,
        Fact.Outcome outcome,
        Fact.Source source,
        @Nullable Boolean adaptationsReset,
        @Nullable Integer odometerKm,
        @Nullable String performedBy,
        @Nullable String note,
        @Nullable UUID retuneItemId,
        List<String> warnings) {}
