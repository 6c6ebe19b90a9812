package org.bayhold.calibration;

import java.util.List;
import java.util.Map;
import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** A revision was issued; the first entry of its chain. */
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
        Map<String, Object> assumes,
        @Nullable Double boostTargetKpa,
        @Nullable Personal note) {}
