package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/**
 * A recorded part change.
 *
 * @param retuneItemId the retune item that is open because of it; null where there is none
 */
record PartChangeView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        Category category,
        @Nullable String position,
        Fact.Action action,
        @Nullable UUID partSpecId,
        @Nullable String serial,
        @Nullable String ecuHardware,
        Fact.Source source,
        @Nullable Integer odometerKm,
        @Nullable String performedBy,
        @Nullable String note,
        @Nullable UUID retuneItemId,
        List<String> warnings) {}
