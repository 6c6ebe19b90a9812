package org.bayhold.gate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The time of one car as a picture: a lane for each thing that ever changed, cut into bands. Lengths are in the picture's
 * own units, of which it is {@link #WIDTH} wide. Short times are drawn wider than long ones in proportion, so that a day of
 * work stays readable beside a year on the road. Pure.
 *
 * @param lanes from top to bottom
 * @param marks what happened at one moment
 * @param ticks where a date is written below
 */
record TimeLine(List<Lane> lanes, List<Mark> marks, List<Tick> ticks, List<Pointer> pointers) {
    static final int WIDTH = 1000;
    /** Of the names of the lanes, above each lane. */
    private static final int LANE = 54;

    private static final int TOP = 34;
    private static final int LEAST_GAP = 24;
    private static final int LEAST_LABEL = 112;
    /** A character of the picture's text is about this wide. */
    private static final double CHARACTER = 8.2;

    /** @param y of its bands */
    record Lane(String name, int y, List<Band> bands) {}

    /**
     * From one moment to another.
     *
     * @param from null where it was so from the beginning
     * @param until null where it lasts
     * @param text what it was
     * @param shown as much of the text as there is room for
     * @param kind of the look
     */
    record Band(
            @Nullable Instant from,
            @Nullable Instant until,
            String text,
            String shown,
            Kind kind,
            double x,
            double width) {}

    /** How a band looks: by its pattern and outline, not by colour alone. */
    enum Kind {
        PART,
        FACTORY,
        NOTHING,
        UNKNOWN,
        CALIBRATION,
        MATCHED,
        UNMATCHED,
        HERE,
        AWAY
    }

    /** A handover. */
    record Mark(Instant at, String text, boolean exception, double x) {}

    record Tick(Instant at, double x) {}

    /** A moment that was asked for. */
    record Pointer(String text, double x) {}

    /** What a lane shows from a moment on. */
    record Value(String text, Kind kind) {}

    public int height() {
        return TOP + lanes.size() * LANE + 34;
    }

    public int bottom() {
        return TOP + lanes.size() * LANE;
    }

    /** Puts the moments of a car's time on the picture's width. */
    static final class Scale {
        private final TreeMap<Instant, Double> places = new TreeMap<>();

        /** @param moments at least one */
        Scale(SortedSet<Instant> moments) {
            List<Instant> list = List.copyOf(moments);
            double[] gaps = new double[list.size()];
            double sum = 0;
            for (int i = 1; i < gaps.length; i++) {
                gaps[i] = Math.sqrt(1 + minutes(list.get(i - 1), list.get(i)));
                sum += gaps[i];
            }
            int least = Math.min(LEAST_GAP, WIDTH / (2 * Math.max(1, gaps.length)));
            double free = WIDTH - (double) least * (gaps.length - 1);
            double x = 0;
            for (int i = 0; i < gaps.length; i++) {
                x += i == 0 ? 0 : least + (sum == 0 ? 0 : free * gaps[i] / sum);
                places.put(list.get(i), x);
            }
        }

        private static double minutes(Instant from, Instant until) {
            return Duration.between(from, until).toSeconds() / 60.0;
        }

        /** Between two moments a time stands in proportion. */
        double x(Instant at) {
            var before = places.floorEntry(at);
            var after = places.ceilingEntry(at);
            if (before == null || after == null) {
                return before == null ? 0 : before.getValue();
            }
            long whole = Duration.between(before.getKey(), after.getKey()).toSeconds();
            double part = whole == 0
                    ? 0
                    : (double) Duration.between(before.getKey(), at).toSeconds() / whole;
            return before.getValue() + part * (after.getValue() - before.getValue());
        }

        /** Dates that do not run into each other. */
        List<Tick> ticks() {
            List<Tick> ticks = new ArrayList<>();
            double last = -LEAST_LABEL;
            for (var place : places.entrySet()) {
                double x = place.getValue();
                if (x - last >= LEAST_LABEL && x <= WIDTH - LEAST_LABEL / 2.0) {
                    ticks.add(new Tick(place.getKey(), x));
                    // the first date begins at the edge, the others stand in the middle of their mark
                    last = ticks.size() == 1 ? x + LEAST_LABEL / 2.0 : x;
                }
            }
            return ticks;
        }
    }

    /** The lane of something that has a value at each moment; equal neighbours are one band. */
    static Lane lane(int number, String name, List<Instant> moments, Scale scale, Function<Instant, Value> valueAt) {
        List<Band> bands = new ArrayList<>();
        int begin = 0;
        for (int i = 1; i <= moments.size() - 1; i++) {
            boolean last = i == moments.size() - 1;
            Value value = valueAt.apply(moments.get(begin));
            if (last || !valueAt.apply(moments.get(i)).equals(value)) {
                bands.add(band(moments.get(begin), moments.get(i), last, value, scale));
                begin = i;
            }
        }
        return new Lane(name, TOP + number * LANE + 18, bands);
    }

    private static Band band(Instant from, Instant until, boolean lasts, Value value, Scale scale) {
        double x = scale.x(from);
        double width = scale.x(until) - x;
        int room = (int) ((width - 10) / CHARACTER);
        String text = value.text();
        String shown = text.length() <= room ? text : room < 3 ? "" : text.substring(0, room - 1) + "…";
        return new Band(x == 0 ? null : from, lasts ? null : until, text, shown, value.kind(), x, width);
    }
}
