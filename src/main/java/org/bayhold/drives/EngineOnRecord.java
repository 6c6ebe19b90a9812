package org.bayhold.drives;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** What the record knows of the engine that was driven; the floor above knows it. */
public interface EngineOnRecord {
    /**
     * @param effectiveAt when it was driven; null for now
     * @throws Refusal NOT_FOUND where there is no such car
     */
    Driven driven(UUID vehicleId, @Nullable Instant effectiveAt);

    /**
     * A car as it was driven, and how it is judged.
     *
     * @param calibrationId what was in the ECU; null where that was none of the shop's revisions
     * @param maps those of its maps that have a name
     * @param sparkIgnition false where nothing can be judged: the rules are those of spark ignition
     */
    record Driven(
            @Nullable UUID calibrationId,
            List<CalibrationMap> maps,
            boolean sparkIgnition,
            EngineFacts engine,
            Thresholds thresholds) {
        public Driven {
            maps = List.copyOf(maps);
        }

        /**
         * The name of the map that was driven; null where the calibration has one without a name.
         *
         * @param typed as somebody means it; may be left out where there is one only
         * @throws Refusal INVALID where it could be several, or is none
         */
        @Nullable String map(@Nullable String typed) {
            if (maps.isEmpty()) {
                if (typed != null) {
                    throw Refusal.invalid("map", "drive-log.no-maps");
                }
                return null;
            }
            if (typed == null && maps.size() == 1) {
                return maps.get(0).name();
            }
            return maps.stream()
                    .filter(map -> map.isNamed(typed))
                    .findFirst()
                    .map(CalibrationMap::name)
                    .orElseThrow(() -> Refusal.invalid("map", "drive-log.which-map", names()));
        }

        private String names() {
            return maps.stream().map(CalibrationMap::name).collect(Collectors.joining(", "));
        }
    }
}
