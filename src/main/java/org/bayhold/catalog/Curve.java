package org.bayhold.catalog;

import java.util.Arrays;
import java.util.Optional;

/** A table of signals and flows in which both rise from point to point. Its flows are grams per second. */
public final class Curve {
    public static final int FEWEST_POINTS = 4;
    public static final int MOST_POINTS = 400;
    static final double LARGEST_SIGNAL = 50_000;
    static final double LARGEST_FLOW_G_PER_S = 5_000;
    /** Closer points are a slip of the pen, and would make slopes that no arithmetic can hold. */
    static final double SMALLEST_STEP = 1e-6;

    private final double[] signals;
    private final double[] flowsGPerS;

    private Curve(double[] signals, double[] flowsGPerS) {
        this.signals = signals;
        this.flowsGPerS = flowsGPerS;
    }

    /** Empty where it is no curve: too few or too many points, beyond what a sensor gives, or not rising. */
    public static Optional<Curve> of(double[] signals, double[] flowsGPerS) {
        boolean sound = signals.length == flowsGPerS.length
                && signals.length >= FEWEST_POINTS
                && signals.length <= MOST_POINTS
                && rises(signals, LARGEST_SIGNAL)
                && rises(flowsGPerS, LARGEST_FLOW_G_PER_S);
        return sound ? Optional.of(new Curve(signals.clone(), flowsGPerS.clone())) : Optional.empty();
    }

    public int points() {
        return signals.length;
    }

    /** Volts or hertz. */
    public double signal(int point) {
        return signals[point];
    }

    public double flowGPerS(int point) {
        return flowsGPerS[point];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Curve curve
                && Arrays.equals(signals, curve.signals)
                && Arrays.equals(flowsGPerS, curve.flowsGPerS);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(signals) + Arrays.hashCode(flowsGPerS);
    }

    @Override
    public String toString() {
        return signals.length + " points from " + signals[0] + ": " + flowsGPerS[0];
    }

    /** Written so that a NaN anywhere is refused. */
    private static boolean rises(double[] values, double most) {
        boolean rises = values[0] >= 0 && values[values.length - 1] <= most;
        for (int i = 1; i < values.length && rises; i++) {
            rises = values[i] - values[i - 1] >= SMALLEST_STEP;
        }
        return rises;
    }
}
