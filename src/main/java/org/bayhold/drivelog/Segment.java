package org.bayhold.drivelog;

/**
 * A few seconds of steady running, as means over their time. {@code docs/drive-log.md, D7}.
 *
 * @param endSeconds when it ended
 * @param flow g/s; NaN where it is not known, and so with all that is not logged
 * @param inverseFlow the mean of its inverse
 * @param trim mean of the banks that are logged, percent
 */
record Segment(
        double endSeconds,
        double seconds,
        double rpm,
        double load,
        double flow,
        double inverseFlow,
        AirSource source,
        double trim,
        Trim bank1,
        Trim bank2,
        double vehicleSpeed,
        long firstRow,
        long lastRow) {
    /** The total trim of one bank: its mean, and the mean of its square; NaN where the bank is not logged. */
    record Trim(double mean, double meanSquare) {
        boolean isKnown() {
            return !Double.isNaN(mean);
        }
    }

    private static final double IDLE_RPM = 1_200;
    private static final double STANDING_KM_H = 3;

    /** Standing still at a low speed of the engine; where the speed of the car is not logged, the engine's alone tells. */
    boolean isIdle() {
        return rpm < IDLE_RPM && !(vehicleSpeed >= STANDING_KM_H);
    }
}
