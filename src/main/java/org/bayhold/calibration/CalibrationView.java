package org.bayhold.calibration;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/** A revision as answered. */
record CalibrationView(
        UUID id,
        String name,
        String revision,
        String ecuHardware,
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        Purpose purpose,
        @Nullable String limits,
        List<Line> coverage,
        List<MapView> maps,
        Map<String, Object> assumes,
        @Nullable Double boostTargetKpa,
        @Nullable String note,
        Instant recordedAt,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawalReason,
        List<String> warnings) {

    /** What the revision was written for at one place. */
    record Line(
            Category category,
            @Nullable String position,
            List<UUID> partSpecIds,
            boolean factoryAllowed,
            boolean noneAllowed) {}
}
