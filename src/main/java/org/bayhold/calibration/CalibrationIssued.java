package org.bayhold.calibration;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/**
 * A revision was issued; the first entry of its chain.
 *
 * @param maps null where it names none, as in entries from before there were any
 */
record CalibrationIssued(
        String name,
        String revision,
        String ecuHardware,
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        Purpose purpose,
        @Nullable String limits,
        List<CoverageLine> coverage,
        @Nullable List<IssuedMap> maps,
        Map<String, Object> assumes,
        @Nullable Double boostTargetKpa,
        @Nullable Personal note) {

    /** A map in the entry. */
    record IssuedMap(
            String name,
            List<UUID> fuels,
            boolean factoryFuel,
            @Nullable Personal note) {}
}
