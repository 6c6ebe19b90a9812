package org.bayhold.gate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.bayhold.catalog.Place;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Tick;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/**
 * What each part contributes, as bars about lambda 1, and the whole below them. Lengths are in the picture's own units. Pure.
 * {@code docs/prediction.md, P3 and P15}.
 *
 * @param zero where nothing has to be corrected
 * @param mostLess where the ECU can take no more fuel away; null beyond the picture
 * @param mostMore where it can add no more; null beyond the picture
 */
record ContributionPicture(
        int height,
        double zero,
        @Nullable Double mostLess,
        @Nullable Double mostMore,
        List<Tick> ticks,
        List<Bar> bars) {
    private static final int EDGE = 10;
    private static final int TOP = 18;
    private static final int STEP = 44;
    static final int THICK = 14;
    private static final double LEAST_PERCENT = -100;
    private static final double MOST_PERCENT = 150;
    private static final double FARTHEST_LIMIT = 60;

    /**
     * @param name as much of the place as there is room for
     * @param y of the bar; its words stand above it
     * @param whole all parts together
     * @param beyond the bar is longer than the picture
     * @param whisker from where to where it may lie, by its band; null where it has none
     */
    record Bar(
            String place,
            String name,
            String value,
            Mixture mixture,
            @Nullable Mixture atIdle,
            boolean whole,
            double x,
            double y,
            double width,
            boolean beyond,
            @Nullable Whisker whisker) {
        public boolean lean() {
            return mixture.trimDemandPercent() >= 0;
        }
    }

    record Whisker(double from, double to) {}

    /** Null where no part's contribution is known. */
    static @Nullable ContributionPicture of(Prediction prediction, Function<Place, String> names, String whole) {
        if (prediction.alone().isEmpty()) {
            return null;
        }
        Axis axis = axis(prediction);
        List<Bar> bars = new ArrayList<>();
        for (Prediction.Alone alone : prediction.alone()) {
            bars.add(bar(names.apply(alone.place()), alone.mixture(), alone.mixtureAtIdle(), false, bars.size(), axis));
        }
        Mixture together = prediction.mixture();
        if (together != null) {
            bars.add(bar(whole, together, prediction.mixtureAtIdle(), true, bars.size(), axis));
        }
        double authority = prediction.trimAuthorityPercent();
        return new ContributionPicture(
                TOP + bars.size() * STEP + 2 * Plot.ROW + 6,
                axis.at(0),
                axis.holds(-authority) ? axis.at(-authority) : null,
                axis.holds(authority) ? axis.at(authority) : null,
                Plot.ticks(axis, Plot.ROOM_ACROSS, ""),
                bars);
    }

    private static Axis axis(Prediction prediction) {
        double least = 0;
        double most = 0;
        double authority = prediction.trimAuthorityPercent();
        if (authority <= FARTHEST_LIMIT) {
            least = -authority;
            most = authority;
        }
        List<Mixture> all = new ArrayList<>();
        prediction.alone().forEach(alone -> all.add(alone.mixture()));
        Mixture together = prediction.mixture();
        if (together != null) {
            all.add(together);
        }
        for (Mixture mixture : all) {
            Whisker percent = whisker(mixture);
            least = Math.min(
                    least, Math.max(LEAST_PERCENT, percent == null ? mixture.trimDemandPercent() : percent.from()));
            most = Math.max(most, Math.min(MOST_PERCENT, percent == null ? mixture.trimDemandPercent() : percent.to()));
        }
        double more = Math.max(2, (most - least) * 0.06);
        return Axis.linear(least - more, most + more, EDGE, Plot.WIDTH - EDGE);
    }

    /** In percent of trim. */
    private static @Nullable Whisker whisker(Mixture mixture) {
        Double low = mixture.lambdaLow();
        Double high = mixture.lambdaHigh();
        return low == null || high == null ? null : new Whisker((low - 1) * 100, (high - 1) * 100);
    }

    private static Bar bar(
            String place, Mixture mixture, @Nullable Mixture atIdle, boolean whole, int number, Axis axis) {
        double trim = mixture.trimDemandPercent();
        double from = axis.at(Math.min(0, trim));
        double to = axis.at(Math.max(0, trim));
        String value = value(mixture);
        Whisker percent = whisker(mixture);
        double room = Plot.WIDTH - 2.0 * EDGE - Plot.width(value) - 2 * Plot.CHARACTER;
        return new Bar(
                place,
                Plot.shortened(place, room),
                value,
                mixture,
                atIdle,
                whole,
                from,
                TOP + (double) number * STEP + 6,
                to - from,
                !axis.holds(trim),
                percent == null ? null : new Whisker(axis.at(percent.from()), axis.at(percent.to())));
    }

    /** With its sign: what comes back to lambda 1. */
    static String value(Mixture mixture) {
        return Plot.signed(mixture.trimDemandPercent(), 1) + "\u00a0%";
    }

    public boolean banded() {
        return bars.stream().anyMatch(bar -> bar.whisker() != null);
    }

    public int bottom() {
        return TOP + bars.size() * STEP;
    }

    public int thick() {
        return THICK;
    }

    public int left() {
        return EDGE;
    }

    public int right() {
        return Plot.WIDTH - EDGE;
    }
}
