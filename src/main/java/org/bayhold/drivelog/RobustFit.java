package org.bayhold.drivelog;

import java.util.Arrays;
import org.bayhold.drivelog.LeastSquares.Solution;
import org.jspecify.annotations.Nullable;

/**
 * Weighted regression by Huber's M-estimator, iterated: what lies far off counts less, and a few bad points move nothing.
 * Its standard errors follow Huber 1981, section 7.6 (from memory), grow with the correlation of neighbours, and are
 * widened where there are few stretches of driving, so that two of them hold 95 %. {@code docs/drive-log.md, D10}.
 */
final class RobustFit {
    /** 95 % as efficient as least squares where the noise is normal (Huber 1964, from memory). */
    private static final double TUNING = 1.345;
    /** Of the median of absolute values to a standard deviation, where the noise is normal. */
    private static final double MEDIAN_TO_SIGMA = 1.4826;

    private static final int ROUNDS = 60;
    private static final double CONVERGED = 1e-10;
    private static final double MOST_CORRELATION = 0.9;

    /** What was fitted. */
    static final class Result {
        private final double[] coefficients;
        private final double[] standardErrors;
        private final double correlation;

        private Result(double[] coefficients, double[] standardErrors, double correlation) {
            this.coefficients = coefficients;
            this.standardErrors = standardErrors;
            this.correlation = correlation;
        }

        double coefficient(int index) {
            return coefficients[index];
        }

        double standardError(int index) {
            return standardErrors[index];
        }

        /** Of neighbours, as estimated; 0 where it is none or negative. */
        double correlation() {
            return correlation;
        }
    }

    private RobustFit() {}

    /**
     * @param follows for each point whether the one before it is its neighbour in the drive
     * @return null where the columns depend on each other
     */
    static @Nullable Result fit(double[][] columns, double[] y, double[] weights, boolean[] follows) {
        double mean = Arrays.stream(weights).average().orElse(1);
        double[] relative = Arrays.stream(weights).map(weight -> weight / mean).toArray();
        double[] robust = new double[y.length];
        Arrays.fill(robust, 1);
        Solution solution = null;
        double[] residuals = y.clone();
        double scale = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double[] both = new double[y.length];
            for (int i = 0; i < y.length; i++) {
                both[i] = relative[i] * robust[i];
            }
            Solution next = LeastSquares.solve(columns, y, both);
            if (next == null) {
                return null;
            }
            boolean converged = solution != null && isClose(solution.coefficients(), next.coefficients());
            solution = next;
            residuals = residuals(columns, y, solution.coefficients());
            if (converged) {
                break;
            }
            scale = scale(residuals, relative, columns.length);
            if (scale <= 1e-12 * Arrays.stream(y).map(Math::abs).max().orElse(0)) {
                break; // most points lie on it
            }
            for (int i = 0; i < y.length; i++) {
                double standard = Math.abs(residuals[i]) * Math.sqrt(relative[i]);
                robust[i] = standard <= TUNING * scale ? 1 : TUNING * scale / standard;
            }
        }
        if (solution == null) {
            return null;
        }
        double correlation = correlation(residuals, relative, scale, follows);
        double[] errors = standardErrors(columns, y, relative, residuals, scale);
        double inflation =
                Math.sqrt(inflation(correlation, follows)) * Student.widening(stretches(follows) - columns.length);
        for (int j = 0; j < errors.length; j++) {
            errors[j] *= inflation;
        }
        return new Result(solution.coefficients(), errors, correlation);
    }

    /** Points that follow each other without a break are one stretch. */
    private static int stretches(boolean[] follows) {
        int stretches = 0;
        for (boolean follow : follows) {
            stretches += follow ? 0 : 1;
        }
        return stretches;
    }

    /**
     * By how much the variance of a mean grows where points come in stretches of neighbours whose correlation fades with
     * their distance: that of a first-order process, cut at the mean length of a stretch.
     */
    static double inflation(double correlation, boolean[] follows) {
        double length = follows.length / (double) Math.max(1, stretches(follows));
        double inflation = 1;
        double power = 1;
        for (int lag = 1; lag < length; lag++) {
            power *= correlation;
            inflation += 2 * (1 - lag / length) * power;
        }
        return inflation;
    }

    private static boolean isClose(double[] one, double[] other) {
        for (int j = 0; j < one.length; j++) {
            if (Math.abs(one[j] - other[j]) > CONVERGED * (Math.abs(one[j]) + CONVERGED)) {
                return false;
            }
        }
        return true;
    }

    static double[] residuals(double[][] columns, double[] y, double[] coefficients) {
        double[] residuals = y.clone();
        for (int j = 0; j < coefficients.length; j++) {
            for (int i = 0; i < y.length; i++) {
                residuals[i] -= coefficients[j] * columns[j][i];
            }
        }
        return residuals;
    }

    private static double scale(double[] residuals, double[] weights, int parameters) {
        double[] absolute = new double[residuals.length];
        for (int i = 0; i < residuals.length; i++) {
            absolute[i] = Math.abs(residuals[i]) * Math.sqrt(weights[i]);
        }
        Arrays.sort(absolute);
        // the fit goes as near to as many points as it has parameters
        int half = (absolute.length - 1 + parameters) / 2;
        return MEDIAN_TO_SIGMA * absolute[Math.min(half, absolute.length - 1)];
    }

    private static double[] standardErrors(
            double[][] columns, double[] y, double[] weights, double[] residuals, double scale) {
        int n = y.length;
        int p = columns.length;
        Solution plain = LeastSquares.solve(columns, y, weights);
        double[] errors = new double[p];
        if (plain == null || n <= p) {
            Arrays.fill(errors, Double.NaN);
            return errors;
        }
        double influence = 0;
        int inside = 0;
        for (int i = 0; i < n; i++) {
            double standard = residuals[i] * Math.sqrt(weights[i]);
            boolean isInside = Math.abs(standard) <= TUNING * scale;
            double clipped = isInside ? standard : Math.copySign(TUNING * scale, standard);
            influence += clipped * clipped;
            inside += isInside ? 1 : 0;
        }
        double share = Math.max(inside, 1) / (double) n;
        double correction = 1 + p / (double) n * (1 - share) / share;
        double variance = correction * correction * influence / (n - p) / (share * share);
        for (int j = 0; j < p; j++) {
            errors[j] = Math.sqrt(variance * plain.unscaledVariance(j));
        }
        return errors;
    }

    /** Of neighbours' residuals, clipped as in the fit; corrected for being estimated from few. */
    private static double correlation(double[] residuals, double[] weights, double scale, boolean[] follows) {
        double products = 0;
        double squares = 0;
        int pairs = 0;
        double before = 0;
        for (int i = 0; i < residuals.length; i++) {
            double standard = residuals[i] * Math.sqrt(weights[i]);
            double clipped = Math.max(-TUNING * scale, Math.min(TUNING * scale, standard));
            if (follows[i]) {
                products += clipped * before;
                pairs++;
            }
            squares += clipped * clipped;
            before = clipped;
        }
        if (pairs < 4 || squares == 0) {
            return 0;
        }
        double plain = products / pairs / (squares / residuals.length);
        double corrected = plain + (1 + 3 * Math.max(0, plain)) / pairs;
        return Math.max(0, Math.min(MOST_CORRELATION, corrected));
    }
}
