package org.bayhold.drives;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.bayhold.drivelog.AirSource;
import org.bayhold.drivelog.Fit;
import org.bayhold.drivelog.Fit.Point;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Figures;
import org.bayhold.page.Plot.Limit;
import org.bayhold.page.Plot.Spot;
import org.bayhold.page.Plot.Tick;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/**
 * The fuelling error against the airflow, with what was fitted to it. Lengths are in the picture's own units; equal ratios of
 * airflow are equally wide. Pure. {@code docs/drive-log.md, D10 and D18}.
 *
 * @param line the path of the fitted curve
 * @param band two standard errors about it; empty where they are not known
 * @param zero where nothing is corrected
 * @param more where the ECU can add no more; null beyond the picture
 * @param less where it can take no more away; null beyond the picture
 * @param scale percent, with two standard errors
 * @param offset with its unit and two standard errors
 */
record ErrorPicture(
        String axis,
        List<Tick> percents,
        List<Tick> flows,
        List<Dot> dots,
        String line,
        String band,
        double zero,
        @Nullable Limit more,
        @Nullable Limit less,
        AirSource source,
        String scale,
        String offset,
        int points,
        List<Row> rows)
        implements Plot.Framed {
    static final int TOP = 24;
    static final int BOTTOM = 224;
    private static final double SMALLEST = 1.6;
    private static final double LARGEST = 4;
    /** The picture is never taller than this leaves room for; a steady error of a few tenths must not look like much. */
    private static final double LEAST_PERCENT = 4;

    private static final double MOST_PERCENT = 100;
    private static final int PARTS = 48;
    private static final int ROWS = 8;
    private static final int STANDARD_ERRORS = 2;

    /** @param r of the disc, whose area goes by the seconds */
    record Dot(double x, double y, double r) {}

    /** @param measured the mean over its flows, as is the flow at which the curve is told */
    record Row(String flow, String seconds, String measured, String fitted, String within) {}

    /** Null where there is no fit. */
    static @Nullable ErrorPicture of(@Nullable Fit fit, double authorityPercent, Units units, Words words) {
        if (fit == null || fit.points().isEmpty()) {
            return null;
        }
        List<Point> points = Thinned.of(fit.points());
        DoubleSummaryStatistics flow =
                points.stream().mapToDouble(Point::flowGPerS).summaryStatistics();
        DoubleUnaryOperator shown = figure -> units.convert(figure, "g/s");
        Axis across = Axis.logarithmic(
                shown.applyAsDouble(flow.getMin() / 1.12),
                shown.applyAsDouble(flow.getMax() * 1.12),
                Plot.LEFT,
                Plot.RIGHT);
        Axis up = up(points, fit, flow);
        List<Figures> curve = curve(fit, flow, shown, 0);
        List<Dot> dots = dots(points, across, up, shown);
        List<Spot> taken = new ArrayList<>(Plot.spots(curve, across, up));
        dots.forEach(dot -> taken.add(new Spot(dot.x(), dot.y())));
        boolean roomBetween = up.at(-authorityPercent) - up.at(authorityPercent) > 2 * Plot.ROW;
        Limit more =
                Plot.limit(authorityPercent, words.say("pictures.no-more"), Plot.Side.above(roomBetween), up, taken);
        if (more != null) {
            taken.addAll(more.label().spots());
        }
        Limit less =
                Plot.limit(-authorityPercent, words.say("pictures.no-less"), Plot.Side.below(roomBetween), up, taken);
        return new ErrorPicture(
                words.say("pictures.airflow", units.symbol("g/s")),
                Plot.ticks(up, Plot.ROOM_DOWN, ""),
                Plot.ticks(across, Plot.ROOM_ACROSS, ""),
                dots,
                Plot.line(curve, across, up),
                isSure(fit)
                        ? Plot.area(
                                curve(fit, flow, shown, STANDARD_ERRORS),
                                curve(fit, flow, shown, -STANDARD_ERRORS),
                                across,
                                up)
                        : "",
                up.at(0),
                more,
                less,
                fit.source(),
                Plot.signed(fit.scalePercent(), 1) + within(fit.scaleStandardError(), 1) + "\u00a0%",
                offset(fit, units),
                fit.points().size(),
                rows(fit, units));
    }

    private static boolean isSure(Fit fit) {
        return Double.isFinite(fit.scaleStandardError()) && Double.isFinite(fit.offsetStandardError());
    }

    /**
     * Of the curve, in percent. That the errors of scale and offset go together is not known here and is neglected. They do so
     * against each other, since {@code 1 / m} is above nought: the true band is narrower, and most so amid the points.
     */
    static double standardError(Fit fit, double flowGPerS) {
        return Math.hypot(fit.scaleStandardError(), 100 * fit.offsetStandardError() / flowGPerS);
    }

    private static List<Figures> curve(
            Fit fit, DoubleSummaryStatistics flow, DoubleUnaryOperator shown, int standardErrors) {
        List<Figures> curve = new ArrayList<>();
        for (int part = 0; part <= PARTS; part++) {
            double at = flow.getMin() * Math.pow(flow.getMax() / flow.getMin(), (double) part / PARTS);
            double more = standardErrors == 0 ? 0 : standardErrors * standardError(fit, at);
            curve.add(new Figures(shown.applyAsDouble(at), fit.at(at) + more));
        }
        return curve;
    }

    /** With nought, all points, and the curve as far as it is not absurd; the band may end at the edge. */
    private static Axis up(List<Point> points, Fit fit, DoubleSummaryStatistics flow) {
        DoubleSummaryStatistics percents = new DoubleSummaryStatistics();
        points.forEach(point -> percents.accept(point.trimPercent()));
        percents.accept(LEAST_PERCENT);
        percents.accept(-LEAST_PERCENT);
        for (double at : new double[] {flow.getMin(), flow.getMax()}) {
            percents.accept(Math.max(-MOST_PERCENT, Math.min(MOST_PERCENT, fit.at(at))));
        }
        double more = (percents.getMax() - percents.getMin()) * 0.08;
        return Axis.linear(percents.getMin() - more, percents.getMax() + more, BOTTOM, TOP);
    }

    private static List<Dot> dots(List<Point> points, Axis across, Axis up, DoubleUnaryOperator shown) {
        double most = points.stream().mapToDouble(Point::seconds).max().orElseThrow();
        return points.stream()
                .map(point -> new Dot(
                        across.at(shown.applyAsDouble(point.flowGPerS())),
                        up.at(point.trimPercent()),
                        Math.max(SMALLEST, LARGEST * Math.sqrt(point.seconds() / most))))
                .toList();
    }

    /** What the fit says of a few ranges of airflow, beside what was measured there. */
    private static List<Row> rows(Fit fit, Units units) {
        List<Row> rows = new ArrayList<>();
        for (List<Point> points : Thinned.columns(fit.points(), ROWS)) {
            DoubleSummaryStatistics flow =
                    points.stream().mapToDouble(Point::flowGPerS).summaryStatistics();
            Point mean = Thinned.mean(points);
            String from = units.number(flow.getMin(), "g/s", 1);
            String to = units.number(flow.getMax(), "g/s", 1);
            rows.add(new Row(
                    (from.equals(to) ? from : from + "–" + to) + " " + units.symbol("g/s"),
                    Units.plain(mean.seconds(), 0),
                    Plot.signed(mean.trimPercent(), 1) + "\u00a0%",
                    Plot.signed(fit.at(mean.flowGPerS()), 1) + "\u00a0%",
                    isSure(fit)
                            ? within(standardError(fit, mean.flowGPerS()), 1).strip()
                            : ""));
        }
        return rows;
    }

    private static String offset(Fit fit, Units units) {
        int decimals = units == Units.METRIC ? 2 : 3;
        return Plot.signed(units.convert(fit.offsetGPerS(), "g/s"), decimals)
                + within(units.convert(fit.offsetStandardError(), "g/s"), decimals) + " " + units.symbol("g/s");
    }

    private static String within(double standardError, int decimals) {
        return Double.isFinite(standardError) ? " ± " + Units.plain(STANDARD_ERRORS * standardError, decimals) : "";
    }

    public int top() {
        return TOP;
    }

    public int bottom() {
        return BOTTOM;
    }

    public int height() {
        return BOTTOM + 2 * Plot.ROW + 6;
    }
}
