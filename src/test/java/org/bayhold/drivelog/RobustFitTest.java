package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Objects;
import java.util.SplittableRandom;
import org.bayhold.drivelog.LeastSquares.Solution;
import org.junit.jupiter.api.Test;

/** docs/drive-log.md, D10. */
class RobustFitTest {
    private static final int POINTS = 60;

    private final double[] x = new double[POINTS];
    private final double[] y = new double[POINTS];
    private final double[] weights = new double[POINTS];
    private final boolean[] follows = new boolean[POINTS];
    private final double[] ones = new double[POINTS];

    RobustFitTest() {
        Arrays.fill(ones, 1);
        for (int i = 0; i < POINTS; i++) {
            x[i] = i / 10.0;
            weights[i] = 4 + i % 5;
        }
    }

    private RobustFit.Result fit() {
        return Objects.requireNonNull(RobustFit.fit(new double[][] {ones, x}, y, weights, follows));
    }

    @Test
    void aLineWithoutNoiseComesBackWithoutError() {
        for (int i = 0; i < POINTS; i++) {
            y[i] = 3 - 2 * x[i];
        }

        assertThat(fit().coefficient(0)).isCloseTo(3, within(1e-12));
        assertThat(fit().coefficient(1)).isCloseTo(-2, within(1e-12));
        assertThat(fit().standardError(0)).isCloseTo(0, within(1e-9));
    }

    @Test
    void aFewBadPointsMoveNothing() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < POINTS; i++) {
            y[i] = 3 - 2 * x[i] + 0.1 * random.nextGaussian();
        }
        RobustFit.Result clean = fit();
        for (int i = 5; i < POINTS; i += 12) {
            y[i] += 40;
        }
        RobustFit.Result spoilt = fit();
        Solution plain = Objects.requireNonNull(LeastSquares.solve(new double[][] {ones, x}, y, weights));

        assertThat(plain.coefficient(0) - clean.coefficient(0))
                .as("least squares is moved")
                .isGreaterThan(1);
        assertThat(spoilt.coefficient(0)).isCloseTo(clean.coefficient(0), within(0.06));
        assertThat(spoilt.coefficient(1)).isCloseTo(clean.coefficient(1), within(0.02));
        assertThat(spoilt.standardError(0)).isLessThan(3 * clean.standardError(0));
    }

    /** Where nothing lies far off, it is weighted least squares, and so are its errors but for the few stretches. */
    @Test
    void withoutBadPointsItIsNearlyLeastSquares() {
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < POINTS; i++) {
            y[i] = 1 + x[i] + random.nextDouble() - 0.5;
        }
        Solution plain = Objects.requireNonNull(LeastSquares.solve(new double[][] {ones, x}, y, weights));

        assertThat(fit().coefficient(0)).isCloseTo(plain.coefficient(0), within(plain.standardError(0) / 4));
        assertThat(fit().standardError(0) / plain.standardError(0)).isBetween(0.85, 1.25);
    }

    @Test
    void neighboursThatResembleEachOtherTellLess() {
        SplittableRandom random = new SplittableRandom(5);
        double disturbance = 0;
        for (int i = 0; i < POINTS; i++) {
            disturbance = 0.8 * disturbance + 0.6 * random.nextGaussian();
            y[i] = disturbance;
        }
        RobustFit.Result apart = fit();
        for (int i = 0; i < POINTS; i++) {
            follows[i] = i % 12 != 0;
        }
        RobustFit.Result together = fit();

        assertThat(apart.correlation()).isZero();
        assertThat(together.correlation()).isBetween(0.5, 0.9);
        assertThat(together.standardError(0)).isGreaterThan(1.5 * apart.standardError(0));
    }

    /** That of a first-order process, summed up by hand: 1 + 2 (2/3 * 0.5 + 1/3 * 0.25). */
    @Test
    void theInflationOfAStretchOfThree() {
        assertThat(RobustFit.inflation(0.5, new boolean[] {false, true, true, false, true, true}))
                .isCloseTo(1 + 2 * (2 / 3.0 * 0.5 + 1 / 3.0 * 0.25), within(1e-12));
        assertThat(RobustFit.inflation(0.5, new boolean[] {false, false})).isEqualTo(1);
        assertThat(RobustFit.inflation(0, new boolean[] {false, true})).isEqualTo(1);
    }

    @Test
    void columnsThatDependOnEachOtherHaveNoFit() {
        assertThat(RobustFit.fit(new double[][] {ones, ones}, y, weights, follows))
                .isNull();
    }
}
