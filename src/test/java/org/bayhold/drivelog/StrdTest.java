package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Objects;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.bayhold.drivelog.LeastSquares.Solution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The certified linear data sets of NIST StRD (www.itl.nist.gov/div898/strd), data and certified values as quoted in public
 * repositories. Nine digits of each coefficient and of each standard error. docs/drive-log.md, D10.
 */
class StrdTest {
    private static final double[] ONES_1_TO_1 = {1, 1, 1, 1, 1, 1};

    private record Certified(
            String name, double[][] columns, double[] y, double[] coefficients, double[] errors, double deviation) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Certified> sets() {
        return Stream.of(
                norris(),
                longley(),
                wampler(
                        1,
                        ONES_1_TO_1,
                        new double[6],
                        0,
                        1,
                        6,
                        63,
                        364,
                        1365,
                        3906,
                        9331,
                        19608,
                        37449,
                        66430,
                        111111,
                        177156,
                        271453,
                        402234,
                        579195,
                        813616,
                        1118481,
                        1508598,
                        2000719,
                        2613660,
                        3368421),
                wampler(
                        2,
                        new double[] {1, 0.1, 0.01, 0.001, 0.0001, 0.00001},
                        new double[6],
                        0,
                        1.00000,
                        1.11111,
                        1.24992,
                        1.42753,
                        1.65984,
                        1.96875,
                        2.38336,
                        2.94117,
                        3.68928,
                        4.68559,
                        6.00000,
                        7.71561,
                        9.92992,
                        12.75603,
                        16.32384,
                        20.78125,
                        26.29536,
                        33.05367,
                        41.26528,
                        51.16209,
                        63.00000),
                wampler(
                        3,
                        ONES_1_TO_1,
                        errors(1),
                        2360.14502379268,
                        760,
                        -2042,
                        2111,
                        -1684,
                        3888,
                        1858,
                        11379,
                        17560,
                        39287,
                        64382,
                        113159,
                        175108,
                        273291,
                        400186,
                        581243,
                        811568,
                        1121004,
                        1506550,
                        2002767,
                        2611612,
                        3369180),
                wampler(
                        4,
                        ONES_1_TO_1,
                        errors(100),
                        236014.502379268,
                        75901,
                        -204794,
                        204863,
                        -204436,
                        253665,
                        -200894,
                        214131,
                        -185192,
                        221249,
                        -138370,
                        315911,
                        -27644,
                        455253,
                        197434,
                        783995,
                        608816,
                        1370781,
                        1303798,
                        2205519,
                        2408860,
                        3444321),
                wampler(
                        5,
                        ONES_1_TO_1,
                        errors(10_000),
                        23601450.2379268,
                        7590001,
                        -20479994,
                        20480063,
                        -20479636,
                        25231365,
                        -20476094,
                        20489331,
                        -20460392,
                        18417449,
                        -20413570,
                        20591111,
                        -20302844,
                        18651453,
                        -20077766,
                        21059195,
                        -19666384,
                        26348481,
                        -18971402,
                        22480719,
                        -17866340,
                        10958421));
    }

    @ParameterizedTest
    @MethodSource("sets")
    void nineDigitsAreRight(Certified set) {
        double[] weights = new double[set.y().length];
        Arrays.fill(weights, 1);

        Solution solution = Objects.requireNonNull(LeastSquares.solve(set.columns(), set.y(), weights));

        for (int j = 0; j < set.coefficients().length; j++) {
            assertThat(solution.coefficient(j))
                    .as("B%d", j)
                    .isCloseTo(set.coefficients()[j], Percentage.withPercentage(1e-7));
            if (set.deviation() > 0) {
                assertThat(solution.standardError(j))
                        .as("standard deviation of B%d", j)
                        .isCloseTo(set.errors()[j], Percentage.withPercentage(1e-7));
            } else {
                assertThat(solution.standardError(j)).isCloseTo(0, within(1e-9));
            }
        }
        assertThat(Math.sqrt(solution.residualVariance()))
                .isCloseTo(set.deviation(), within(Math.max(1e-9, 1e-9 * set.deviation())));
    }

    private static double[] errors(double times) {
        double[] errors = {
            2152.32624678170, 2363.55173469681, 779.343524331583, 101.475507550350, 5.64566512170752, 0.112324854679312
        };
        return Arrays.stream(errors).map(error -> error * times).toArray();
    }

    /** A polynomial of the fifth degree over 0 to 20. */
    private static Certified wampler(
            int number, double[] coefficients, double[] errors, double deviation, double... y) {
        double[][] columns = new double[6][y.length];
        for (int x = 0; x < y.length; x++) {
            for (int power = 0; power < 6; power++) {
                columns[power][x] = Math.pow(x, power);
            }
        }
        return new Certified("Wampler" + number, columns, y, coefficients, errors, deviation);
    }

    private static Certified norris() {
        double[] y = {
            0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
            448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
            228.9, 668.4, 449.2, 0.2
        };
        double[] x = {
            0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
            447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
            229.2, 669.1, 448.9, 0.5
        };
        return new Certified(
                "Norris",
                new double[][] {ones(y.length), x},
                y,
                new double[] {-0.262323073774029, 1.00211681802045},
                new double[] {0.232818234301152, 0.429796848199937E-03},
                0.884796396144373);
    }

    private static Certified longley() {
        double[] y = {
            60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331,
            70551
        };
        double[][] columns = {
            ones(y.length),
            {83, 88.5, 88.2, 89.5, 96.2, 98.1, 99, 100, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9},
            {
                234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704,
                502601, 518173, 554894
            },
            {2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007},
            {1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827},
            {
                107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366,
                125368, 127852, 130081
            },
            {1947, 1948, 1949, 1950, 1951, 1952, 1953, 1954, 1955, 1956, 1957, 1958, 1959, 1960, 1961, 1962}
        };
        return new Certified(
                "Longley",
                columns,
                y,
                new double[] {
                    -3482258.63459582,
                    15.0618722713733,
                    -0.358191792925910E-01,
                    -2.02022980381683,
                    -1.03322686717359,
                    -0.511041056535807E-01,
                    1829.15146461355
                },
                new double[] {
                    890420.383607373,
                    84.9149257747669,
                    0.334910077722432E-01,
                    0.488399681651699,
                    0.214274163161675,
                    0.226073200069370,
                    455.478499142212
                },
                304.854073561965);
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }
}
