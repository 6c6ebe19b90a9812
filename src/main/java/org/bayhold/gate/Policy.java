package org.bayhold.gate;

import org.bayhold.drivelog.Thresholds;
import org.jspecify.annotations.Nullable;

/**
 * What the shop asks for before a car leaves.
 *
 * @param readBackMaxAgeHours how old an ECU check may be at the handover
 * @param troubleCodesChecked a related trouble code that an ECU check brought holds the car
 * @param driveLogRequired a drive log after the flash must have passed
 * @param secondPersonRequired a sign-off is not for the one who flashed
 * @param driveLogThresholds what the drive-log check calls normal; null in versions from before that was policy
 */
public record Policy(
        boolean readBackRequired,
        int readBackMaxAgeHours,
        boolean troubleCodesChecked,
        boolean driveLogRequired,
        boolean acknowledgementRequired,
        boolean secondPersonRequired,
        @Nullable Thresholds driveLogThresholds) {
    /** What holds from the beginning of time until a manager decides otherwise. */
    public static final Policy DEFAULT = new Policy(true, 24, true, false, true, false);

    /** What a shop begins with, and what is usual. */
    static final Policy USUAL = new Policy(true, 24, true, true, true, false, Thresholds.DEFAULTS);

    /** As a version says it from before the thresholds of the drive-log check were policy. */
    public Policy(
            boolean readBackRequired,
            int readBackMaxAgeHours,
            boolean troubleCodesChecked,
            boolean driveLogRequired,
            boolean acknowledgementRequired,
            boolean secondPersonRequired) {
        this(
                readBackRequired,
                readBackMaxAgeHours,
                troubleCodesChecked,
                driveLogRequired,
                acknowledgementRequired,
                secondPersonRequired,
                null);
    }

    /** The thresholds in force: the defaults where this version names none. */
    public Thresholds thresholds() {
        return driveLogThresholds == null ? Thresholds.DEFAULTS : driveLogThresholds;
    }
}
