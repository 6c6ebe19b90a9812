package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.jspecify.annotations.Nullable;

/**
 * What was flashed last, as answered.
 *
 * @param how FLASHED, FOUND (by an ECU check), NOT_OURS or FAILED
 * @param calibrationId null where the file is not one of the shop's
 * @param at when it was flashed or found
 */
public record FlashedView(
        String how,
        @Nullable UUID calibrationId,
        @Nullable String name,
        @Nullable String revision,
        @Nullable String ecuHardware,
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        @Nullable Purpose purpose,
        Instant at,
        UUID recordId) {

    /** Null where nothing was ever flashed, or nothing is known of it. */
    public static @Nullable FlashedView of(InEcu inEcu) {
        if (inEcu instanceof InEcu.Flashed in) {
            return of("FLASHED", in.revision(), in.at(), in.recordId());
        }
        if (inEcu instanceof InEcu.Found in) {
            return of("FOUND", in.revision(), in.at(), in.recordId());
        }
        if (inEcu instanceof InEcu.NotOurs in) {
            return of("NOT_OURS", null, in.at(), in.recordId());
        }
        return inEcu instanceof InEcu.Failed in ? of("FAILED", in.attempted(), in.at(), in.recordId()) : null;
    }

    private static FlashedView of(String how, @Nullable Revision revision, Instant at, UUID recordId) {
        if (revision == null) {
            return new FlashedView(how, null, null, null, null, null, null, null, null, at, recordId);
        }
        return new FlashedView(
                how,
                revision.id(),
                revision.name(),
                revision.revision(),
                revision.ecuHardware(),
                revision.reading().calid(),
                revision.reading().cvn(),
                revision.reading().fileSha256(),
                revision.purpose(),
                at,
                recordId);
    }
}
