package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * Weighted linear least squares by Householder's QR, with the solution refined once and again on residuals that are
 * summed up in twice the precision (Björck 1967, from memory), so that nearly dependent columns cost no digits. Held against
 * NIST StRD in {@code StrdTest}. {@code docs/drive-log.md, D10}.
 */
final class LeastSquares {
    private static final int REFINEMENTS = 4;
    private static final double SINGULAR = 1e-14;

    private final int rows;
    private final int columns;
    /** The columns, each by the root of its weight and by its own length; then Householder's vectors below R. */
    private final double[][] qr;

    private final double[] diagonal;
    private final double[][] scaled;
    private final double[] lengths;

    private LeastSquares(double[][] columnsOfX, double[] rootWeights) {
        columns = columnsOfX.length;
        rows = rootWeights.length;
        qr = new double[columns][rows];
        scaled = new double[columns][rows];
        lengths = new double[columns];
        diagonal = new double[columns];
        for (int j = 0; j < columns; j++) {
            for (int i = 0; i < rows; i++) {
                scaled[j][i] = columnsOfX[j][i] * rootWeights[i];
            }
            // a power of two, so that the scaling does not round
            lengths[j] = Math.scalb(1.0, Math.max(-1_000, Math.min(1_000, Math.getExponent(norm(scaled[j], 0)))));
            for (int i = 0; i < rows; i++) {
                scaled[j][i] /= lengths[j];
                qr[j][i] = scaled[j][i];
            }
        }
    }

    /** What was fitted. */
    static final class Solution {
        private final double[] coefficients;
        private final double[][] unscaledCovariance;
        private final double residualSumOfSquares;
        private final int degreesOfFreedom;

        private Solution(double[] coefficients, double[][] covariance, double squares, int degreesOfFreedom) {
            this.coefficients = coefficients;
            this.unscaledCovariance = covariance;
            this.residualSumOfSquares = squares;
            this.degreesOfFreedom = degreesOfFreedom;
        }

        double coefficient(int index) {
            return coefficients[index];
        }

        double[] coefficients() {
            return coefficients.clone();
        }

        /** A coefficient's, for residuals of variance 1. */
        double unscaledVariance(int index) {
            return unscaledCovariance[index][index];
        }

        /** NaN where there is a coefficient for each row. */
        double residualVariance() {
            return degreesOfFreedom == 0 ? Double.NaN : residualSumOfSquares / degreesOfFreedom;
        }

        double standardError(int index) {
            return Math.sqrt(residualVariance() * unscaledVariance(index));
        }
    }

    /** @return null where the columns depend on each other or are more than the rows */
    static @Nullable Solution solve(double[][] columnsOfX, double[] y, double[] weights) {
        double[] roots = new double[weights.length];
        double[] target = new double[weights.length];
        for (int i = 0; i < roots.length; i++) {
            roots[i] = Math.sqrt(weights[i]);
            target[i] = y[i] * roots[i];
        }
        LeastSquares system = new LeastSquares(columnsOfX, roots);
        return system.rows < system.columns || !system.factorise() ? null : system.solve(target);
    }

    private boolean factorise() {
        for (int k = 0; k < columns; k++) {
            double norm = norm(qr[k], k);
            if (!(norm > SINGULAR * norm(scaled[k], 0)) || !Double.isFinite(norm)) {
                return false;
            }
            double alpha = qr[k][k] > 0 ? -norm : norm;
            qr[k][k] -= alpha;
            diagonal[k] = alpha;
            for (int j = k + 1; j < columns; j++) {
                reflect(qr[k], k, qr[j]);
            }
        }
        return true;
    }

    /** Householder's reflection by the vector that begins at k. */
    private static void reflect(double[] vector, int k, double[] target) {
        double dot = 0;
        double square = 0;
        for (int i = k; i < target.length; i++) {
            dot += vector[i] * target[i];
            square += vector[i] * vector[i];
        }
        double factor = square == 0 ? 0 : 2 * dot / square;
        for (int i = k; i < target.length; i++) {
            target[i] -= factor * vector[i];
        }
    }

    private Solution solve(double[] y) {
        double[] x = new double[columns];
        double[] residuals = new double[rows];
        for (int round = 0; round <= REFINEMENTS; round++) {
            improve(y, x, residuals);
        }
        double squares = 0;
        for (double residual : residuals) {
            squares += residual * residual;
        }
        double[][] covariance = covariance();
        for (int j = 0; j < columns; j++) {
            x[j] /= lengths[j];
            for (int k = 0; k < columns; k++) {
                covariance[j][k] /= lengths[j] * lengths[k];
            }
        }
        return new Solution(x, covariance, squares, rows - columns);
    }

    /** One step towards {@code r + Ax = y, A'r = 0} from what is left of both. */
    private void improve(double[] y, double[] x, double[] residuals) {
        double[] f = new double[rows];
        for (int i = 0; i < rows; i++) {
            Sum left = new Sum(y[i]);
            left.add(-1, residuals[i]);
            for (int j = 0; j < columns; j++) {
                left.add(-scaled[j][i], x[j]);
            }
            f[i] = left.value();
        }
        double[] h = new double[columns];
        for (int j = 0; j < columns; j++) {
            Sum left = new Sum(0);
            for (int i = 0; i < rows; i++) {
                left.add(-scaled[j][i], residuals[i]);
            }
            h[j] = left.value();
        }
        for (int j = 0; j < columns; j++) {
            for (int k = 0; k < j; k++) {
                h[j] -= qr[j][k] * h[k];
            }
            h[j] /= diagonal[j];
        }
        for (int k = 0; k < columns; k++) {
            reflect(qr[k], k, f);
        }
        double[] step = new double[columns];
        for (int j = columns - 1; j >= 0; j--) {
            double sum = f[j] - h[j];
            for (int k = j + 1; k < columns; k++) {
                sum -= qr[k][j] * step[k];
            }
            step[j] = sum / diagonal[j];
        }
        System.arraycopy(h, 0, f, 0, columns);
        for (int k = columns - 1; k >= 0; k--) {
            reflect(qr[k], k, f);
        }
        for (int i = 0; i < rows; i++) {
            residuals[i] += f[i];
        }
        for (int j = 0; j < columns; j++) {
            x[j] += step[j];
        }
    }

    /** The inverse of R'R. */
    private double[][] covariance() {
        double[][] inverse = new double[columns][columns];
        for (int c = 0; c < columns; c++) {
            for (int j = c; j >= 0; j--) {
                double sum = j == c ? 1 : 0;
                for (int k = j + 1; k <= c; k++) {
                    sum -= qr[k][j] * inverse[k][c];
                }
                inverse[j][c] = sum / diagonal[j];
            }
        }
        double[][] covariance = new double[columns][columns];
        for (int a = 0; a < columns; a++) {
            for (int b = 0; b < columns; b++) {
                for (int k = Math.max(a, b); k < columns; k++) {
                    covariance[a][b] += inverse[a][k] * inverse[b][k];
                }
            }
        }
        return covariance;
    }

    /** A sum of products in twice the precision of a double (Ogita, Rump and Oishi 2005, from memory). */
    private static final class Sum {
        private double high;
        private double low;

        Sum(double begin) {
            high = begin;
        }

        void add(double a, double b) {
            double product = a * b;
            double sum = high + product;
            double part = sum - high;
            low += (high - (sum - part)) + (product - part) + Math.fma(a, b, -product);
            high = sum;
        }

        double value() {
            return high + low;
        }
    }

    private static double norm(double[] vector, int from) {
        double square = 0;
        for (int i = from; i < vector.length; i++) {
            square += vector[i] * vector[i];
        }
        return Math.sqrt(square);
    }
}
