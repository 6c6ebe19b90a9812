package org.bayhold.gate;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.util.Map;
import java.util.Objects;
import org.bayhold.drivelog.Thresholds;
import org.jspecify.annotations.Nullable;

/**
 * What to change of the policy; what is left out stays.
 *
 * @param driveLogThresholds by name, each as {@link ThresholdGroup} has it
 */
record PolicyRequest(
        @Nullable Boolean readBackRequired,
        @Nullable @Min(1) @Max(8760) Integer readBackMaxAgeHours,
        @Nullable Boolean troubleCodesChecked,
        @Nullable Boolean driveLogRequired,
        @Nullable Boolean acknowledgementRequired,
        @Nullable Boolean secondPersonRequired,
        @Nullable Map<String, @Nullable Object> driveLogThresholds) {
    static final String THRESHOLDS = "driveLogThresholds";

    /** The policy as it is with what is asked for in its place. */
    Policy over(Policy now, Thresholds thresholds) {
        return new Policy(
                Objects.requireNonNullElse(readBackRequired, now.readBackRequired()),
                Objects.requireNonNullElse(readBackMaxAgeHours, now.readBackMaxAgeHours()),
                Objects.requireNonNullElse(troubleCodesChecked, now.troubleCodesChecked()),
                Objects.requireNonNullElse(driveLogRequired, now.driveLogRequired()),
                Objects.requireNonNullElse(acknowledgementRequired, now.acknowledgementRequired()),
                Objects.requireNonNullElse(secondPersonRequired, now.secondPersonRequired()),
                thresholds);
    }
}
