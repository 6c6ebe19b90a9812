package org.bayhold.prediction;

import java.util.Arrays;
import org.bayhold.catalog.Curve;

/**
 * The monotone piecewise cubic of Fritsch and Carlson (SIAM Journal on Numerical Analysis 17, 1980) through a rising
 * table: it passes through every point and rises between them, so that it has an inverse. Never asked beyond its ends.
 */
final class MonotoneCubic {
    /** Between two points, halving alone would need 60 or so. */
    private static final int MOST_ITERATIONS = 200;

    private final double[] x;
    private final double[] y;
    private final double[] slope;

    MonotoneCubic(Curve curve) {
        int points = curve.points();
        x = new double[points];
        y = new double[points];
        for (int i = 0; i < points; i++) {
            x[i] = curve.signal(i);
            y[i] = curve.flowGPerS(i);
        }
        slope = slopes(x, y);
    }

    double first() {
        return x[0];
    }

    double last() {
        return x[x.length - 1];
    }

    double lowest() {
        return y[0];
    }

    double highest() {
        return y[y.length - 1];
    }

    double slope(int point) {
        return slope[point];
    }

    /** The flow at a signal between the first and the last. */
    double at(double signal) {
        int k = piece(x, signal);
        return on(k, (signal - x[k]) / (x[k + 1] - x[k]));
    }

    /** The signal at a flow between the lowest and the highest: Newton's step where it stays inside, else a halving. */
    double inverse(double flow) {
        int k = piece(y, flow);
        double low = 0;
        double high = 1;
        double t = (flow - y[k]) / (y[k + 1] - y[k]);
        for (int i = 0; i < MOST_ITERATIONS && high - low > Math.ulp(1.0); i++) {
            double error = on(k, t) - flow;
            if (error == 0) {
                break;
            }
            if (error > 0) {
                high = t;
            } else {
                low = t;
            }
            double next = t - error / rise(k, t);
            double before = t;
            t = next > low && next < high ? next : (low + high) / 2;
            if (t == before) {
                break;
            }
        }
        return x[k] + t * (x[k + 1] - x[k]);
    }

    /** Rounding must not carry a value past the points between which it lies. */
    private double on(int k, double t) {
        double h = x[k + 1] - x[k];
        double rest = 1 - t;
        double value = y[k] * (1 + 2 * t) * rest * rest
                + h * slope[k] * t * rest * rest
                + y[k + 1] * t * t * (3 - 2 * t)
                - h * slope[k + 1] * t * t * rest;
        return Math.min(Math.max(value, y[k]), y[k + 1]);
    }

    /** By t, not by x. */
    private double rise(int k, double t) {
        double h = x[k + 1] - x[k];
        return 6 * t * (1 - t) * (y[k + 1] - y[k])
                + h * slope[k] * (1 - t) * (1 - 3 * t)
                + h * slope[k + 1] * t * (3 * t - 2);
    }

    private static int piece(double[] points, double value) {
        int found = Arrays.binarySearch(points, value);
        int below = found >= 0 ? found : -found - 2;
        return Math.min(Math.max(below, 0), points.length - 2);
    }

    /** The mean of the neighbouring chords, drawn in where it would make the piece turn back. */
    private static double[] slopes(double[] x, double[] y) {
        int last = x.length - 1;
        double[] chord = new double[last];
        for (int k = 0; k < last; k++) {
            chord[k] = (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
        }
        double[] slope = new double[last + 1];
        slope[0] = chord[0];
        slope[last] = chord[last - 1];
        for (int k = 1; k < last; k++) {
            slope[k] = (chord[k - 1] + chord[k]) / 2;
        }
        for (int k = 0; k < last; k++) {
            double alpha = slope[k] / chord[k];
            double beta = slope[k + 1] / chord[k];
            double square = alpha * alpha + beta * beta;
            if (square > 9) {
                double draw = 3 / Math.sqrt(square);
                slope[k] = draw * alpha * chord[k];
                slope[k + 1] = draw * beta * chord[k];
            }
        }
        return slope;
    }
}
