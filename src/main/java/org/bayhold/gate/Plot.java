package org.bayhold.gate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bayhold.page.Axis;

/**
 * What the pictures of a prediction share. They are {@value #WIDTH} wide in their own units, which is about what a phone has, so
 * that their text is read at about its own size on any screen. Pure.
 */
final class Plot {
    static final int WIDTH = 360;
    static final int LEFT = 42;
    static final int RIGHT = 350;
    /** Between two figures below each other, and beside each other. */
    static final int ROOM_DOWN = 26;

    static final int ROOM_ACROSS = 40;
    /** A line of text. */
    static final int ROW = 17;
    /** A character of the pictures' text is no wider than this. */
    static final double CHARACTER = 7.4;

    private Plot() {}

    /** A figure beside an axis. */
    record Tick(double at, String text) {}

    /** A text in the middle of its place. */
    record Label(String text, double x, double y) {
        double begins() {
            return x - width(text) / 2;
        }

        double ends() {
            return x + width(text) / 2;
        }
    }

    /** @param at where it points to */
    record Wanted(String text, double at) {}

    /** A point of a line, as figures. */
    record Figures(double across, double up) {}

    static double width(String text) {
        return text.length() * CHARACTER;
    }

    /** As much of a text as there is room for. */
    static String shortened(String text, double room) {
        int characters = (int) (room / CHARACTER);
        return text.length() <= characters ? text : text.substring(0, Math.max(0, characters - 1)) + "…";
    }

    static List<Tick> ticks(Axis axis, double room, String unit) {
        return axis.ticks(room).stream()
                .map(figure -> new Tick(axis.at(figure), org.bayhold.page.Units.plain(figure, 6) + unit))
                .toList();
    }

    /** Texts under a picture, none over another: each in the first row that has room for it. */
    static List<Label> under(List<Wanted> wanted, double baseline) {
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
    static String line(List<Figures> points, Axis across, Axis up) {
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
    static String area(List<Figures> above, List<Figures> below, Axis across, Axis up) {
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

    static String place(double x, double y) {
        return String.format(Locale.ROOT, "%.1f %.1f", x, y);
    }
}
