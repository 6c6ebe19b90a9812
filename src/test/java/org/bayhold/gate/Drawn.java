package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bayhold.page.Plot;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/** What is common to trying the pictures of a prediction: what they are made of, and what must hold of any. */
final class Drawn {
    static final int ROUNDS = 3_000;
    private static final Pattern PLACE = Pattern.compile("[ML](-?[\\d.]+) (-?[\\d.]+)");

    private Drawn() {}

    record At(double x, double y) {}

    static void assertReadable(List<Plot.Label> labels, double height, String where) {
        for (Plot.Label one : labels) {
            assertThat(one.begins()).as(where).isGreaterThanOrEqualTo(0);
            assertThat(one.ends()).as(where).isLessThanOrEqualTo(Plot.WIDTH);
            assertThat(one.y()).as(where).isBetween(10.0, height);
            for (Plot.Label other : labels) {
                boolean beside = one.ends() <= other.begins() || other.ends() <= one.begins();
                assertThat(one == other || beside || Math.abs(one.y() - other.y()) >= 12)
                        .as("%s over %s, %s", one, other, where)
                        .isTrue();
            }
        }
    }

    static void assertRising(List<Plot.Tick> ticks, int direction, String where) {
        for (int i = 1; i < ticks.size(); i++) {
            assertThat((ticks.get(i).at() - ticks.get(i - 1).at()) * direction)
                    .as(where)
                    .isGreaterThan(10);
            assertThat(Double.parseDouble(ticks.get(i).text()))
                    .as(where)
                    .isGreaterThan(Double.parseDouble(ticks.get(i - 1).text()));
        }
    }

    static List<At> places(String path) {
        List<At> places = new ArrayList<>();
        Matcher place = PLACE.matcher(path);
        while (place.find()) {
            places.add(new At(Double.parseDouble(place.group(1)), Double.parseDouble(place.group(2))));
        }
        return places;
    }

    static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.api.Assertions.within(0.06);
    }

    static Mixture mixture(double lambda, @Nullable Double bandPercent) {
        double trim = (lambda - 1) * 100;
        return new Mixture(
                lambda,
                bandPercent == null ? null : lambda / (1 + bandPercent / 100),
                bandPercent == null ? null : lambda / (1 - bandPercent / 100),
                trim,
                Math.abs(trim) / 25 * 100,
                lambda);
    }

    static Mixture anyMixture(SplittableRandom random) {
        double lambda = random.nextBoolean() ? any(random, 0.7, 1.4) : any(random, 0.01, 30);
        return mixture(lambda, random.nextBoolean() ? 10.0 : null);
    }

    static double any(SplittableRandom random, double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }
}
