package org.bayhold.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What all pictures share. They are {@value #WIDTH} wide in their own units, which is about what a phone has, so
 * that their text is read at about its own size on any screen. Pure.
 */
public final class Plot {
    public static final int WIDTH = 360;
    public static final int LEFT = 42;
    public static final int RIGHT = 350;
    /** Between two figures below each other, and beside each other. */
    public static final int ROOM_DOWN = 26;

    public static final int ROOM_ACROSS = 40;
    /** A line of text. */
    public static final int ROW = 17;
    /** A character of the pictures' text is no wider than this. */
    public static final double CHARACTER = 8.4;

    /** What stands above the base of a text. */
    private static final int LETTER = 10;

    private static final int PARTS = 24;
    private static final int STRIDE = 8;

    private Plot() {}

    /** A picture as wide as all of them; its template asks for where it begins and ends. */
    public interface Framed {
        default double left() {
            return LEFT;
        }

        default double right() {
            return RIGHT;
        }
    }

    /** A figure beside an axis. */
    public record Tick(double at, String text) {}

    /** A text in the middle of its place. */
    public record Label(String text, double x, double y) {
        public double begins() {
            return x - width(text) / 2;
        }

        public double ends() {
            return x + width(text) / 2;
        }

        /** What no other text may cover. */
        public List<Spot> spots() {
            return DoubleStream.iterate(begins(), at -> at < ends() + STRIDE, at -> at + STRIDE)
                    .boxed()
                    .flatMap(at -> Stream.of(y, y - LETTER / 2.0, y - LETTER).map(height -> new Spot(at, height)))
                    .toList();
        }

        private boolean covers(Spot spot) {
            return spot.x() > begins() - 4 && spot.x() < ends() + 4 && spot.y() > y - LETTER - 3 && spot.y() < y + 6;
        }
    }

    /** @param at where it points to */
    public record Wanted(String text, double at) {}

    /** A point of a line, as figures. */
    public record Figures(double across, double up) {}

    /** A place of the picture. */
    public record Spot(double x, double y) {}

    /** A horizontal line that means something, and the words at it. */
    public record Limit(double y, Label label) {}

    /** Where a text at a line may stand. */
    public enum Side {
        ABOVE(-6),
        BELOW(15);

        private final int baseline;

        Side(int baseline) {
            this.baseline = baseline;
        }

        public static List<Side> above(boolean orBelow) {
            return orBelow ? List.of(ABOVE, BELOW) : List.of(ABOVE);
        }

        public static List<Side> below(boolean orAbove) {
            return orAbove ? List.of(BELOW, ABOVE) : List.of(BELOW);
        }
    }

    /**
     * A text at a horizontal line, as far to the left as the curve does not run through it; at the left where it does
     * everywhere.
     *
     * @param sides the better first
     * @param taken what must not be hidden
     */
    public static Label beside(String text, double y, List<Side> sides, Axis up, List<Spot> taken) {
        double half = width(text) / 2;
        Label first = new Label(text, LEFT + 6 + half, y + sides.get(0).baseline);
        for (double x = LEFT + 6 + half; x <= RIGHT - 6 - half; x += STRIDE) {
            for (Side side : sides) {
                double baseline = y + side.baseline;
                Label label = new Label(text, x, baseline);
                boolean inside = baseline - LETTER >= up.to() && baseline + 3 <= up.from();
                if (inside && taken.stream().noneMatch(label::covers)) {
                    return label;
                }
            }
        }
        return first;
    }

    /** Null where the figure is beyond the picture. */
    public static @Nullable Limit limit(double figure, String words, List<Side> sides, Axis up, List<Spot> taken) {
        return up.holds(figure) ? new Limit(up.at(figure), beside(words, up.at(figure), sides, up, taken)) : null;
    }

    /** A horizontal line. */
    public static List<Spot> across(double y) {
        return DoubleStream.iterate(LEFT, x -> x <= RIGHT, x -> x + STRIDE)
                .mapToObj(x -> new Spot(x, y))
                .toList();
    }

    /** Places of a line, close enough that no text slips between two of them. */
    public static List<Spot> spots(List<Figures> points, Axis across, Axis up) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Figures to = points.get(i);
            Figures from = points.get(Math.max(0, i - 1));
            for (int part = 1; part <= PARTS; part++) {
                double done = (double) part / PARTS;
                spots.add(new Spot(
                        across.at(from.across()) * (1 - done) + across.at(to.across()) * done,
                        up.at(from.up()) * (1 - done) + up.at(to.up()) * done));
            }
        }
        return spots;
    }

    /** With its sign, unless it is nought when it is rounded. */
    public static String signed(double figure, int decimals) {
        String digits = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(figure));
        boolean isNought = digits.chars().allMatch(digit -> digit == '0' || digit == '.');
        return (isNought ? "" : figure > 0 ? "+" : "−") + digits;
    }

    public static double width(String text) {
        return text.length() * CHARACTER;
    }

    /** As much of a text as there is room for; what stands in brackets goes first. */
    public static String shortened(String whole, double room) {
        int characters = (int) (room / CHARACTER);
        String text = whole.length() <= characters ? whole : whole.replaceFirst(" \\([^)]*\\)", "");
        return text.length() <= characters ? text : text.substring(0, Math.max(0, characters - 1)) + "…";
    }

    public static List<Tick> ticks(Axis axis, double room, String unit) {
        return axis.ticks(room).stream()
                .map(figure -> new Tick(axis.at(figure), Units.plain(figure, 6) + unit))
                .toList();
    }

    /** Texts under a picture, none over another: each in the first row that has room for it. */
    public static List<Label> under(List<Wanted> wanted, double baseline) {
        List<Label> placed = new ArrayList<>();
        for (Wanted text : wanted) {
            double half = width(text.text()) / 2;
            double x = Math.min(WIDTH - half, Math.max(half, text.at()));
            Label label = new Label(text.text(), x, baseline);
            while (overlaps(label, placed)) {
                label = new Label(text.text(), x, label.y() + ROW);
            }
            placed.add(label);
        }
        return placed;
    }

    private static boolean overlaps(Label label, List<Label> placed) {
        return placed.stream()
                .anyMatch(other -> other.y() == label.y()
                        && label.begins() < other.ends() + CHARACTER
                        && other.begins() < label.ends() + CHARACTER);
    }

    /** A line through points, as an SVG path; what lies above or below the picture is left out, and never bent into it. */
    public static String line(List<Figures> points, Axis across, Axis up) {
        StringBuilder path = new StringBuilder();
        boolean open = false;
        for (int i = 1; i < points.size(); i++) {
            Figures from = points.get(i - 1);
            Figures to = points.get(i);
            double rise = to.up() - from.up();
            double first = rise == 0 ? 0 : Math.min(part(up.least(), from, rise), part(up.most(), from, rise));
            double last = rise == 0 ? 1 : Math.max(part(up.least(), from, rise), part(up.most(), from, rise));
            double begin = Math.max(0, first);
            double end = Math.min(1, last);
            if (begin > end || (rise == 0 && !up.holds(from.up()))) {
                open = false;
                continue;
            }
            if (!open || begin > 0) {
                path.append('M').append(between(from, to, begin, across, up));
            }
            path.append('L').append(between(from, to, end, across, up));
            open = end == 1;
        }
        return path.toString();
    }

    private static double part(double figure, Figures from, double rise) {
        return (figure - from.up()) / rise;
    }

    /** Between two places of the picture, not of the figures: an axis may be logarithmic. */
    private static String between(Figures from, Figures to, double part, Axis across, Axis up) {
        double x = across.at(from.across()) + part * (across.at(to.across()) - across.at(from.across()));
        return place(x, up.at(from.up() + part * (to.up() - from.up())));
    }

    /** The area between two lines; what lies beyond the picture ends at its edge. */
    public static String area(List<Figures> above, List<Figures> below, Axis across, Axis up) {
        StringBuilder path = new StringBuilder();
        for (Figures point : above) {
            path.append(path.length() == 0 ? 'M' : 'L').append(place(across.at(point.across()), up.at(point.up())));
        }
        for (int i = below.size() - 1; i >= 0; i--) {
            Figures point = below.get(i);
            path.append('L').append(place(across.at(point.across()), up.at(point.up())));
        }
        return path.append('Z').toString();
    }

    public static String place(double x, double y) {
        return String.format(Locale.ROOT, "%.1f %.1f", x, y);
    }
}
