package org.bayhold.gate;

/**
 * What the shop asks for before a car leaves.
 *
 * @param readBackMaxAgeHours how old an ECU check may be at the handover
 * @param troubleCodesChecked a related trouble code that an ECU check brought holds the car
 * @param driveLogRequired cannot be set before the drive-log check exists
 * @param secondPersonRequired a sign-off is not for the one who flashed
 */
public record Policy(
        boolean readBackRequired,
        int readBackMaxAgeHours,
        boolean troubleCodesChecked,
        boolean driveLogRequired,
        boolean acknowledgementRequired,
        boolean secondPersonRequired) {
    /** What holds from the beginning of time until a manager decides otherwise. */
    public static final Policy DEFAULT = new Policy(true, 24, true, false, true, false);
}
