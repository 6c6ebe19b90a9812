package org.bayhold.drivelog;

/**
 * What the shop calls normal; policy, not physics. The defaults are common practice and have no source. {@code
 * docs/drive-log.md, D16}.
 *
 * @param warmCoolantC from here on the engine is warm
 * @param cruiseTrimPercent the mean total trim at cruise may be so far from zero
 * @param cellTrimPercent the mean total trim of a cell may be so far from zero
 * @param cellSeconds a cell is judged from so many seconds on
 * @param idleSeconds so much idle is needed to pass
 * @param cruiseSeconds so much cruise is needed to pass
 * @param fullLoadSeconds so much full load is needed to pass
 * @param pullSeconds a full-load pull lasts at least so long
 * @param fullLoadPedalPercent of the observed range of the pedal
 * @param lambdaPercent measured lambda may be so far from commanded at full load
 * @param needsLambda whether full load passes only where measured and commanded lambda are logged
 * @param boostPercent the pressure may be so far from its target
 * @param knockDegrees so much retard is harmless
 * @param bankPercent the banks may differ by so much
 * @param leakPercent what an additive error may do to the trim at idle
 * @param deliveryPercent a trim may rise by so much over the top third of the airflow
 * @param limitSharePercent of the time in closed loop a trim may sit at its limit
 * @param dutyPercent injectors may be open for so much of the time
 * @param learnedPercent a long-term trim at the beginning that is farther from zero was learned before
 * @param badSharePercent so much of the file may be bad
 */
public record Thresholds(
        double warmCoolantC,
        double cruiseTrimPercent,
        double cellTrimPercent,
        double cellSeconds,
        double idleSeconds,
        double cruiseSeconds,
        double fullLoadSeconds,
        double pullSeconds,
        double fullLoadPedalPercent,
        double lambdaPercent,
        boolean needsLambda,
        double boostPercent,
        double knockDegrees,
        double bankPercent,
        double leakPercent,
        double deliveryPercent,
        double limitSharePercent,
        double dutyPercent,
        double learnedPercent,
        double badSharePercent) {
    public static final Thresholds DEFAULTS =
            new Thresholds(70, 5, 10, 10, 60, 180, 3, 1.5, 80, 3, true, 7, 3, 6, 5, 3, 1, 85, 2, 5);

    public Thresholds {
        for (double threshold : new double[] {
            warmCoolantC,
            cruiseTrimPercent,
            cellTrimPercent,
            cellSeconds,
            idleSeconds,
            cruiseSeconds,
            fullLoadSeconds,
            pullSeconds,
            fullLoadPedalPercent,
            lambdaPercent,
            boostPercent,
            knockDegrees,
            bankPercent,
            leakPercent,
            deliveryPercent,
            limitSharePercent,
            dutyPercent,
            learnedPercent,
            badSharePercent
        }) {
            if (!(threshold >= 0 && threshold <= 1e6)) {
                throw new IllegalArgumentException("A threshold must be from 0 to 1,000,000: " + threshold);
            }
        }
    }

    /** As long as an engine is run in: its full load is not asked for, nor what shows there alone. */
    public Thresholds withoutFullLoad() {
        return new Thresholds(
                warmCoolantC,
                cruiseTrimPercent,
                cellTrimPercent,
                cellSeconds,
                idleSeconds,
                cruiseSeconds,
                0,
                pullSeconds,
                fullLoadPedalPercent,
                lambdaPercent,
                false,
                boostPercent,
                knockDegrees,
                bankPercent,
                leakPercent,
                deliveryPercent,
                limitSharePercent,
                dutyPercent,
                learnedPercent,
                badSharePercent);
    }
}
