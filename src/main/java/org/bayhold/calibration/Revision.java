package org.bayhold.calibration;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.jspecify.annotations.Nullable;

/**
 * One issued calibration file for one ECU hardware, and the exact parts that it was written for. A place that its
 * coverage does not name means: factory part.
 *
 * @param maps in the order in which they were given, never empty: a revision that names none has one without a name
 * @param compressionIgnition it assumes an engine that ignites by compression
 * @param recordedAt when it was issued
 * @param withdrawnAt when it was withdrawn; null while in force. Effective and recorded at the same instant
 */
public record Revision(
        UUID id,
        String name,
        String revision,
        String ecuHardware,
        Reading reading,
        Purpose purpose,
        List<CoverageLine> coverage,
        List<CalibrationMap> maps,
        boolean compressionIgnition,
        Instant recordedAt,
        @Nullable Instant withdrawnAt) {
    public Revision {
        coverage = List.copyOf(coverage);
        maps = maps.isEmpty() ? List.of(CalibrationMap.WITHOUT_A_NAME) : List.copyOf(maps);
    }

    public Optional<CoverageLine> coverageAt(Place place) {
        return coverage.stream().filter(line -> line.place().equals(place)).findFirst();
    }

    /** Withdrawn at {@code effectiveAt}, as known at {@code knownAt}. */
    public boolean isWithdrawn(Instant effectiveAt, Instant knownAt) {
        return withdrawnAt != null && !withdrawnAt.isAfter(effectiveAt) && !withdrawnAt.isAfter(knownAt);
    }
}
