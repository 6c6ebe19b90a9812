package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/**
 * A recorded inspection.
 *
 * @param differences where it contradicts the record
 */
record InspectionView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        List<Line> lines,
        Fact.Source source,
        @Nullable Integer odometerKm,
        @Nullable String note,
        List<Difference> differences,
        @Nullable UUID retuneItemId,
        List<String> warnings) {

    /** What was found at one place. */
    record Line(
            Category category,
            @Nullable String position,
            Fitted.State state,
            @Nullable UUID partSpecId) {}

    /** A place where something else was found than was on record. */
    record Difference(Category category, @Nullable String position, Fitted recorded, Fitted found) {}
}
