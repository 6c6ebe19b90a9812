package org.bayhold.drives;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Thresholds;
import org.jspecify.annotations.Nullable;

/** What the record knows of the engine that was driven; the floor above knows it. */
public interface EngineOnRecord {
    /**
     * @param effectiveAt when it was driven; null for now
     * @throws org.bayhold.refusal.Refusal NOT_FOUND where there is no such car
     */
    Driven driven(UUID vehicleId, @Nullable Instant effectiveAt);

    /**
     * A car as it was driven, and how it is judged.
     *
     * @param calibrationId what was in the ECU; null where that was none of the shop's revisions
     * @param maps the names of its maps; empty where it has one without a name
     * @param sparkIgnition false where nothing can be judged: the rules are those of spark ignition
     */
    record Driven(
            @Nullable UUID calibrationId,
            List<String> maps,
            boolean sparkIgnition,
            EngineFacts engine,
            Thresholds thresholds) {
        public Driven {
            maps = List.copyOf(maps);
        }
    }
}
