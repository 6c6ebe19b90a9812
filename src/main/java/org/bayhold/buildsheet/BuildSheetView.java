package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.PartSpec;
import org.jspecify.annotations.Nullable;

/** A build sheet as answered, with what is in the ECU. */
record BuildSheetView(
        UUID vehicleId,
        Instant effectiveAt,
        Instant knownAt,
        String ecuHardware,
        List<Line> lines,
        @Nullable FlashedView flashed) {

    /** One place; {@code since} is null where the baseline put it there. */
    record Line(
            Category category,
            @Nullable String position,
            EffectGroup group,
            Fitted.State state,
            @Nullable PartSpec partSpec,
            @Nullable Instant since) {}
}
