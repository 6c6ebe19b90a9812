package org.bayhold.gate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Figures;
import org.bayhold.page.Plot.Label;
import org.bayhold.page.Plot.Tick;
import org.bayhold.page.Plot.Wanted;
import org.bayhold.page.Units;
import org.bayhold.prediction.Sweep.DutyLine;
import org.bayhold.prediction.Sweep.Named;
import org.jspecify.annotations.Nullable;

/**
 * How long the injectors are open, against the airflow. Lengths are in the picture's own units. Pure.
 * {@code docs/prediction.md, P14 and P18}.
 *
 * @param warning where {@value #WARNING_PERCENT} % is
 * @param impossible where {@value #IMPOSSIBLE_PERCENT} % is
 * @param limits the words at them
 * @param crossings where the line passes them, before its end
 * @param names what stands under the picture
 */
record DutyPicture(
        int height,
        List<Tick> percents,
        List<Tick> flows,
        List<Label> names,
        String line,
        double warning,
        double impossible,
        List<Label> limits,
        List<Crossing> crossings,
        @Nullable End end,
        DutyLine of,
        List<Row> rows)
        implements Plot.Framed {
    static final int WARNING_PERCENT = 85;
    static final int IMPOSSIBLE_PERCENT = 100;
    static final int TOP = 24;
    static final int BOTTOM = 200;
    private static final double LEAST_HEIGHT_PERCENT = 112;
    private static final double MOST_HEIGHT_PERCENT = 220;

    record Crossing(int percent, double x, double y) {}

    /** @param named null where it is the percentage that is asked for */
    record Row(@Nullable Named named, double flowGPerS, double percent) {}

    /** The peak: where its mark is. */
    record End(double x, double y) {}

    /** The words at the limits, and of the end. */
    record Names(String peak, String warning, String impossible) {}

    static DutyPicture of(DutyLine of, Units units, Names words) {
        double most = flow(of.peakGPerS(), units);
        Axis across = Axis.linear(0, most * 1.04, Plot.LEFT, Plot.RIGHT);
        Axis up = Axis.linear(
                0,
                Math.min(MOST_HEIGHT_PERCENT, Math.max(LEAST_HEIGHT_PERCENT, of.percentAtPeak() * 1.08)),
                BOTTOM,
                TOP);
        List<Crossing> crossings = new ArrayList<>();
        List<Wanted> wanted = new ArrayList<>();
        for (int percent : new int[] {WARNING_PERCENT, IMPOSSIBLE_PERCENT}) {
            if (of.percentAtPeak() > percent) {
                double x = across.at(flow(of.flowAt(percent), units));
                crossings.add(new Crossing(percent, x, up.at(percent)));
                wanted.add(new Wanted(percent + "\u00a0%", x));
            }
        }
        wanted.add(new Wanted(words.peak(), across.at(most)));
        List<Label> names = Plot.under(wanted, BOTTOM + 2 * Plot.ROW);
        double lowest = names.stream().mapToDouble(Label::y).max().orElse(BOTTOM);
        List<Figures> points = List.of(new Figures(0, 0), new Figures(most, of.percentAtPeak()));
        List<Plot.Spot> taken = new ArrayList<>(Plot.spots(points, across, up));
        taken.addAll(Plot.across(up.at(IMPOSSIBLE_PERCENT)));
        return new DutyPicture(
                (int) lowest + Plot.ROW + 6,
                Plot.ticks(up, Plot.ROOM_DOWN, ""),
                Plot.ticks(across, Plot.ROOM_ACROSS, ""),
                names,
                Plot.line(points, across, up),
                up.at(WARNING_PERCENT),
                up.at(IMPOSSIBLE_PERCENT),
                List.of(
                        Plot.beside(words.warning(), up.at(WARNING_PERCENT), Plot.Side.above(true), up, taken),
                        Plot.beside(words.impossible(), up.at(IMPOSSIBLE_PERCENT), Plot.Side.above(false), up, taken)),
                crossings,
                up.holds(of.percentAtPeak()) ? new End(across.at(most), up.at(of.percentAtPeak())) : null,
                of,
                rows(of));
    }

    /** The named airflows, and where the injectors have no reserve left, be it beyond the peak. */
    private static List<Row> rows(DutyLine of) {
        List<Row> rows = new ArrayList<>(List.of(
                new Row(Named.IDLE, of.idleGPerS(), of.percentAt(of.idleGPerS())),
                new Row(Named.CRUISE, of.cruiseGPerS(), of.percentAt(of.cruiseGPerS())),
                new Row(Named.PEAK, of.peakGPerS(), of.percentAtPeak()),
                new Row(null, of.flowAt(WARNING_PERCENT), WARNING_PERCENT),
                new Row(null, of.flowAt(IMPOSSIBLE_PERCENT), IMPOSSIBLE_PERCENT)));
        rows.sort(Comparator.comparingDouble(Row::flowGPerS));
        return rows;
    }

    private static double flow(double flowGPerS, Units units) {
        return units.convert(flowGPerS, "g/s");
    }

    public int top() {
        return TOP;
    }

    public int bottom() {
        return BOTTOM;
    }
}
