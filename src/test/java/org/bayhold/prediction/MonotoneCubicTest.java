package org.bayhold.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.bayhold.catalog.Curve;
import org.bayhold.support.Seed;
import org.hipparchus.analysis.interpolation.HermiteInterpolator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.junit.jupiter.api.Test;

/** The monotone cubic and its inverse against a general-purpose numerical library, on random rising tables. */
class MonotoneCubicTest {
    private static final int TABLES = 300;
    private final long seed = Seed.OF_THIS_RUN;
    private final SplittableRandom random = new SplittableRandom(seed);

    @Test
    void eachPieceIsTheHermitePolynomialOfItsEnds() {
        for (int n = 0; n < TABLES; n++) {
            Curve curve = curve();
            MonotoneCubic cubic = new MonotoneCubic(curve);
            double[] slopes = fritschAndCarlson(curve);
            for (int k = 0; k + 1 < curve.points(); k++) {
                HermiteInterpolator hermite = new HermiteInterpolator();
                hermite.addSamplePoint(0, flow(curve, k), new double[] {slopes[k] * step(curve, k)});
                hermite.addSamplePoint(1, flow(curve, k + 1), new double[] {slopes[k + 1] * step(curve, k)});
                for (double t : new double[] {0, 0.01, 0.3, 0.5, random.nextDouble(), 0.99, 1}) {
                    assertThat(cubic.at(curve.signal(k) + t * step(curve, k)))
                            .as("%s, table %d, piece %d at %s", Seed.repeats(seed), n, k, t)
                            .isCloseTo(hermite.value(t)[0], within(1e-6 * curve.flowGPerS(curve.points() - 1)));
                }
            }
        }
    }

    @Test
    void theInverseIsTheRootThatASolverFinds() {
        for (int n = 0; n < TABLES; n++) {
            Curve curve = curve();
            MonotoneCubic cubic = new MonotoneCubic(curve);
            double flow = cubic.lowest() + random.nextDouble() * (cubic.highest() - cubic.lowest());
            double root = new BracketingNthOrderBrentSolver(1e-14, 1e-12, 1e-13, 5)
                    .solve(10_000, signal -> cubic.at(signal) - flow, cubic.first(), cubic.last());
            double signal = cubic.inverse(flow);
            String where = Seed.repeats(seed) + ", table " + n;
            assertThat(cubic.at(signal)).as(where).isCloseTo(flow, within(1e-9 * cubic.highest()));
            assertThat(cubic.at(root)).as(where).isCloseTo(flow, within(1e-9 * cubic.highest()));
            assertThat(signal).as(where).isCloseTo(root, within(1e-3 * cubic.last()));
        }
    }

    @Test
    void itPassesThroughEveryPointAndRisesBetweenThem() {
        for (int n = 0; n < TABLES; n++) {
            Curve curve = curve();
            MonotoneCubic cubic = new MonotoneCubic(curve);
            double before = -1;
            for (int k = 0; k + 1 < curve.points(); k++) {
                assertThat(cubic.at(curve.signal(k))).isCloseTo(curve.flowGPerS(k), within(1e-9 * cubic.highest()));
                for (int i = 0; i < 50; i++) {
                    double value = cubic.at(curve.signal(k) + i / 50.0 * step(curve, k));
                    assertThat(value)
                            .as("%s, table %d, piece %d", Seed.repeats(seed), n, k)
                            .isGreaterThanOrEqualTo(before - 1e-9 * cubic.highest());
                    before = value;
                }
            }
        }
    }

    /** Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980): a straight line stays one. */
    @Test
    void aStraightLineStaysOne() {
        MonotoneCubic line = new MonotoneCubic(Curve.of(new double[] {1, 2, 4, 5}, new double[] {10, 20, 40, 50})
                .orElseThrow());
        assertThat(line.at(3.3)).isCloseTo(33, within(1e-12));
        assertThat(line.inverse(33)).isCloseTo(3.3, within(1e-12));
    }

    /** Their method once more, written from the paper's statement: the mean of the chords, inside the circle of 3. */
    private static double[] fritschAndCarlson(Curve curve) {
        int last = curve.points() - 1;
        double[] d = new double[last + 1];
        for (int k = 0; k <= last; k++) {
            double left = chord(curve, Math.max(k - 1, 0));
            double right = chord(curve, Math.min(k, last - 1));
            d[k] = 0.5 * left + 0.5 * right;
        }
        for (int k = 0; k < last; k++) {
            double radius = Math.hypot(d[k] / chord(curve, k), d[k + 1] / chord(curve, k));
            double tau = Math.min(1, 3 / radius);
            d[k] *= tau;
            d[k + 1] *= tau;
        }
        return d;
    }

    private static double chord(Curve curve, int k) {
        return (curve.flowGPerS(k + 1) - curve.flowGPerS(k)) / step(curve, k);
    }

    private static double step(Curve curve, int k) {
        return curve.signal(k + 1) - curve.signal(k);
    }

    private static double[] flow(Curve curve, int k) {
        return new double[] {curve.flowGPerS(k)};
    }

    /** Steps from far apart to close together, so that slopes jump. */
    private Curve curve() {
        int points = random.nextInt(4, 30);
        double[] signals = new double[points];
        double[] flows = new double[points];
        signals[0] = random.nextDouble();
        flows[0] = random.nextDouble();
        for (int i = 1; i < points; i++) {
            signals[i] = signals[i - 1] + Math.pow(10, random.nextDouble(-3, 0));
            flows[i] = flows[i - 1] + Math.pow(10, random.nextDouble(-3, 2));
        }
        return Curve.of(signals, flows).orElseThrow();
    }
}
