package org.bayhold.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What must hold of any picture. */
public final class Drawn {
    public static final int ROUNDS = 3_000;
    private static final Pattern PLACE = Pattern.compile("[ML](-?[\\d.]+) (-?[\\d.]+)");

    private Drawn() {}

    public record At(double x, double y) {}

    public static void assertReadable(List<Plot.Label> labels, double height, String where) {
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

    public static void assertRising(List<Plot.Tick> ticks, int direction, String where) {
        for (int i = 1; i < ticks.size(); i++) {
            assertThat((ticks.get(i).at() - ticks.get(i - 1).at()) * direction)
                    .as(where)
                    .isGreaterThan(10);
            assertThat(Double.parseDouble(ticks.get(i).text()))
                    .as(where)
                    .isGreaterThan(Double.parseDouble(ticks.get(i - 1).text()));
        }
    }

    public static List<At> places(String path) {
        List<At> places = new ArrayList<>();
        Matcher place = PLACE.matcher(path);
        while (place.find()) {
            places.add(new At(Double.parseDouble(place.group(1)), Double.parseDouble(place.group(2))));
        }
        return places;
    }

    public static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.api.Assertions.within(0.06);
    }

    public static double any(SplittableRandom random, double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }
}
