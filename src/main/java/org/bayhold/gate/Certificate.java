package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import org.bayhold.buildsheet.FlashedView;
import org.bayhold.drives.LogPictures;
import org.bayhold.vehicle.VehicleView;
import org.jspecify.annotations.Nullable;

/**
 * The release certificate of one handover, as printed.
 *
 * @param calibrationBefore what was in the ECU when the car left last, or as registered; null where nothing was flashed
 * @param limits the limits of a run-in calibration
 * @param drive what the last drive since the flash showed; null where there is none
 * @param hash of the handover's journal entry
 */
record Certificate(
        HandoffView handoff,
        VehicleView vehicle,
        String ecuHardware,
        List<PartLine> buildSheet,
        @Nullable FlashedView calibrationBefore,
        @Nullable FlashedView calibrationAfter,
        @Nullable String limits,
        List<Work> work,
        Signature signature,
        @Nullable LogPictures drive,
        String hash,
        QrCode qrCode) {

    /** One place before and after; {@code changed} since the car left last. */
    record PartLine(String place, String before, String after, boolean changed) {}

    /** One piece of work or evidence since the car left last. */
    record Work(
            String what,
            Instant at,
            String recordedBy,
            @Nullable String performedBy) {}

    /** Who signs, in which role, and what the signature means. */
    record Signature(String name, String roles, Instant at, String meaning) {}
}
