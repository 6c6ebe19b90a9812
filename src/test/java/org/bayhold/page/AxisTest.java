package org.bayhold.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** Where figures stand in a picture. */
class AxisTest {
    private final SplittableRandom random = new SplittableRandom(Seed.OF_THIS_RUN);

    @Test
    void theEndsStandAtTheEnds() {
        Axis lambda = Axis.linear(0.7, 1.3, 200, 20);
        assertThat(lambda.at(0.7)).isEqualTo(200);
        assertThat(lambda.at(1.3)).isEqualTo(20);
        assertThat(lambda.at(1)).isCloseTo(110, within(1e-9));
        assertThat(lambda.at(9)).isEqualTo(20);
        Axis flow = Axis.logarithmic(4, 400, 40, 340);
        assertThat(flow.at(40)).isCloseTo(190, within(1e-9));
    }

    @Test
    void ticksAreRoundAndHaveRoom() {
        assertThat(Axis.linear(0.7, 1.3, 200, 20).ticks(28)).containsExactly(0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3);
        assertThat(Axis.logarithmic(4, 180, 40, 350).ticks(30)).containsExactly(5.0, 10.0, 20.0, 50.0, 100.0);
        assertThat(Axis.linear(0, 190, 40, 350).ticks(40)).containsExactly(0.0, 50.0, 100.0, 150.0);
    }

    @Test
    void aRoundFigureIsTheNextOne() {
        assertThat(List.of(0.03, 1.0, 1.1, 3.0, 6.0, 70.0))
                .extracting(Axis::roundAbove)
                .containsExactly(0.05, 1.0, 2.0, 5.0, 10.0, 100.0);
    }

    @Test
    void whateverTheEndsTheScaleRisesAndEverythingStaysInside() {
        for (int n = 0; n < 5_000; n++) {
            boolean logarithmic = random.nextBoolean();
            double least = logarithmic ? Math.pow(10, random.nextDouble(-2, 3)) : random.nextDouble(-100, 100);
            double most = least + Math.abs(least) * random.nextDouble(1e-3, 1e3) + 1e-6;
            Axis axis = new Axis(least, most, 40, 350, logarithmic);
            double before = Double.NEGATIVE_INFINITY;
            for (double tick : axis.ticks(30)) {
                double x = axis.at(tick);
                assertThat(x).as("%s", axis).isBetween(40.0, 350.0).isGreaterThan(before + 29.99);
                before = x;
            }
            double one = random.nextDouble(least, most);
            double other = random.nextDouble(least, most);
            assertThat(axis.at(one) <= axis.at(other)).as("%s", axis).isEqualTo(one <= other);
            assertThat(axis.at(random.nextDouble(-1e6, 1e6))).isBetween(40.0, 350.0);
        }
    }

    @Test
    void anAxisWithoutLengthIsNone() {
        assertThatThrownBy(() -> Axis.linear(1, 1, 0, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Axis.logarithmic(0, 1, 0, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Axis.linear(Double.NaN, 1, 0, 10)).isInstanceOf(IllegalArgumentException.class);
    }
}
