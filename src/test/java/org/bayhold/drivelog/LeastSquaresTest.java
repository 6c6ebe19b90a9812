package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.assertj.core.data.Percentage;
import org.bayhold.drivelog.LeastSquares.Solution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The regression beside a general-purpose statistics library. docs/drive-log.md, D10. */
class LeastSquaresTest {
    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWithAStatisticsLibraryOnRandomData(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int columns = 1 + random.nextInt(5);
        int rows = columns + 2 + random.nextInt(60);
        double[][] x = new double[columns][rows];
        double[] y = new double[rows];
        double[] weights = new double[rows];
        double[][] weighted = new double[rows][columns];
        double[] target = new double[rows];
        for (int i = 0; i < rows; i++) {
            weights[i] = 0.1 + random.nextDouble() * 9;
            y[i] = random.nextGaussian() * 10;
            for (int j = 0; j < columns; j++) {
                x[j][i] = random.nextGaussian() * Math.pow(10, j) + 3;
                weighted[i][j] = x[j][i] * Math.sqrt(weights[i]);
            }
            target[i] = y[i] * Math.sqrt(weights[i]);
        }
        OLSMultipleLinearRegression library = new OLSMultipleLinearRegression();
        library.setNoIntercept(true);
        library.newSampleData(target, weighted);

        Solution solution = Objects.requireNonNull(LeastSquares.solve(x, y, weights));

        double[] coefficients = library.estimateRegressionParameters();
        double[] errors = library.estimateRegressionParametersStandardErrors();
        for (int j = 0; j < columns; j++) {
            assertThat(solution.coefficient(j)).isCloseTo(coefficients[j], Percentage.withPercentage(1e-7));
            assertThat(solution.standardError(j)).isCloseTo(errors[j], Percentage.withPercentage(1e-7));
        }
        assertThat(solution.residualVariance())
                .isCloseTo(library.estimateErrorVariance(), Percentage.withPercentage(1e-7));
    }

    @Test
    void columnsThatDependOnEachOtherHaveNoSolution() {
        double[] one = {1, 2, 3, 4};
        double[] weights = {1, 1, 1, 1};

        assertThat(LeastSquares.solve(new double[][] {one, {2, 4, 6, 8}}, one, weights))
                .isNull();
        assertThat(LeastSquares.solve(new double[][] {one, new double[4]}, one, weights))
                .isNull();
        assertThat(LeastSquares.solve(new double[][] {{1}, {2}}, new double[] {1}, new double[] {1}))
                .as("more columns than rows")
                .isNull();
        assertThat(LeastSquares.solve(new double[][] {{Double.NaN, 1}}, new double[] {1, 1}, new double[] {1, 1}))
                .isNull();
    }

    @Test
    void withACoefficientForEachRowNothingIsLeftToTellTheNoise() {
        Solution solution = Objects.requireNonNull(LeastSquares.solve(
                new double[][] {{1, 1}, {0, 1}}, new double[] {2, 5}, new double[] {1, 1}));

        assertThat(solution.coefficients()).containsExactly(new double[] {2, 3}, within(1e-12));
        assertThat(solution.residualVariance()).isNaN();
    }

    /** Of the shop's arithmetic: true = 2 + 1.2233701 * reported; least squares by two libraries. */
    @Test
    void scaleAndOffsetComeBackFromFourPoints() {
        double[] reported = {4, 12, 40, 120};
        double[] truth = {6.893480, 16.680441, 50.934803, 148.804408};
        double[] trims = {72.337, 39.004, 27.337, 24.004};
        SimpleRegression library = new SimpleRegression();
        double[] ones = {1, 1, 1, 1};
        for (int i = 0; i < 4; i++) {
            library.addData(reported[i], truth[i]);
            assertThat((truth[i] / reported[i] - 1) * 100).isCloseTo(trims[i], within(0.001));
        }

        Solution solution = Objects.requireNonNull(LeastSquares.solve(new double[][] {ones, reported}, truth, ones));
        Solution byTrims = Objects.requireNonNull(LeastSquares.solve(
                new double[][] {ones, Arrays.stream(reported).map(m -> 1 / m).toArray()}, trims, ones));

        assertThat(solution.coefficient(0)).isCloseTo(2, within(1e-5)).isCloseTo(library.getIntercept(), within(1e-9));
        assertThat(solution.coefficient(1))
                .isCloseTo(1.223370, within(1e-6))
                .isCloseTo(library.getSlope(), within(1e-9));
        assertThat(byTrims.coefficient(0)).isCloseTo(22.337, within(0.001));
        assertThat(byTrims.coefficient(1) / 100).isCloseTo(2, within(1e-4));
    }

    @ParameterizedTest
    @MethodSource("degrees")
    void theTDistributionIsThatOfTheLibrary(int degrees) {
        assertThat(Student.point95(degrees))
                .isCloseTo(
                        new TDistribution(degrees).inverseCumulativeProbability(0.975), Percentage.withPercentage(0.1));
    }

    static IntStream degrees() {
        return IntStream.of(4, 5, 6, 8, 10, 15, 20, 30, 50, 100, 1_000);
    }
}
