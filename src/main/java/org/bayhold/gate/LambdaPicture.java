package org.bayhold.gate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Figures;
import org.bayhold.page.Plot.Label;
import org.bayhold.page.Plot.Limit;
import org.bayhold.page.Plot.Tick;
import org.bayhold.page.Plot.Wanted;
import org.bayhold.page.Units;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.bayhold.prediction.Sweep.Named;
import org.bayhold.prediction.Sweep.Point;
import org.bayhold.prediction.Sweep.Spot;
import org.jspecify.annotations.Nullable;

/**
 * Lambda across the airflow as a picture. Lengths are in the picture's own units; equal ratios of airflow are equally wide. Pure.
 * {@code docs/prediction.md, P18}.
 *
 * @param line the path of lambda; empty where it is one point, or lies beyond the picture
 * @param band the area of its band; empty where there is none
 * @param one where lambda 1 is
 * @param leanLimit where the ECU can add no more; null beyond the picture
 * @param richLimit where it can take no more away; null beyond the picture
 * @param tableBegins left of it no table says anything; null where none begins within the picture
 * @param tableEnds right of it no table says anything; null where none ends within the picture
 * @param above the largest lambda, where that is above the picture
 * @param below the smallest lambda, where that is below it
 * @param rows what the picture shows, as a table
 */
record LambdaPicture(
        double top,
        int height,
        List<Tick> lambdas,
        List<Tick> flows,
        List<Label> names,
        String line,
        String band,
        double one,
        @Nullable Limit leanLimit,
        @Nullable Limit richLimit,
        @Nullable Double tableBegins,
        @Nullable Double tableEnds,
        @Nullable Double above,
        @Nullable Double below,
        List<Mark> marks,
        List<Row> rows)
        implements Plot.Framed {
    static final int BOTTOM = 200;
    private static final int TOP = 24;
    /** Of the words over the end of a table. */
    private static final int WORDS = 18;
    /** Beyond these nobody has to know how much, and the rest would be a flat line. */
    private static final double LEAST = 0.4;

    private static final double MOST = 2.2;
    private static final double LEAST_LIMIT = 0.5;
    private static final double MOST_LIMIT = 1.6;
    /** So many of the points are rows of the table. */
    private static final int EVERY = 8;

    /** @param shape the path of the mark: a diamond, a disc, a square */
    record Mark(Named named, double x, double y, String shape) {}

    /** @param named null between the named airflows */
    record Row(
            @Nullable Named named,
            double flowGPerS,
            @Nullable Mixture mixture) {
        public String correction() {
            return mixture == null ? "" : ContributionPicture.value(mixture);
        }
    }

    /** The words of the named airflows, and of the limits. */
    record Names(String idle, String cruise, String peak, String leanLimit, String richLimit) {
        private String of(Named named) {
            return switch (named) {
                case IDLE -> idle;
                case CRUISE -> cruise;
                case PEAK -> peak;
            };
        }
    }

    static LambdaPicture of(MixtureLine of, Units units, Names names) {
        boolean cut = of.tableBeginsGPerS() != null || of.tableEndsGPerS() != null;
        double top = cut ? TOP + WORDS : TOP;
        Axis across = across(of, units);
        Axis up = up(of, top);
        List<Label> under = Plot.under(
                of.spots().stream()
                        .map(spot -> new Wanted(names.of(spot.named()), across.at(flow(spot.flowGPerS(), units))))
                        .toList(),
                BOTTOM + 2 * Plot.ROW);
        double lowest = under.stream().mapToDouble(Label::y).max().orElse(BOTTOM);
        DoubleSummaryStatistics lambdas =
                all(of).stream().mapToDouble(Mixture::lambda).summaryStatistics();
        List<Mark> marks = marks(of, units, across, up);
        List<Plot.Spot> taken = new ArrayList<>(Plot.spots(figures(of, units, Mixture::lambda), across, up));
        marks.forEach(mark -> taken.add(new Plot.Spot(mark.x(), mark.y())));
        boolean roomBetween = up.at(of.richLimit()) - up.at(of.leanLimit()) > 2 * Plot.ROW;
        Limit lean = Plot.limit(of.leanLimit(), names.leanLimit(), Plot.Side.above(roomBetween), up, taken);
        if (lean != null) {
            taken.addAll(lean.label().spots());
        }
        Limit rich = Plot.limit(of.richLimit(), names.richLimit(), Plot.Side.below(roomBetween), up, taken);
        return new LambdaPicture(
                top,
                (int) lowest + Plot.ROW + 6,
                Plot.ticks(up, Plot.ROOM_DOWN, ""),
                Plot.ticks(across, Plot.ROOM_ACROSS, ""),
                under,
                Plot.line(figures(of, units, Mixture::lambda), across, up),
                band(of, units, across, up),
                up.at(1),
                lean,
                rich,
                place(of.tableBeginsGPerS(), units, across),
                place(of.tableEndsGPerS(), units, across),
                lambdas.getMax() > up.most() ? lambdas.getMax() : null,
                lambdas.getMin() < up.least() ? lambdas.getMin() : null,
                marks,
                rows(of));
    }

    private static double flow(double flowGPerS, Units units) {
        return units.convert(flowGPerS, "g/s");
    }

    private static @Nullable Double place(@Nullable Double flowGPerS, Units units, Axis across) {
        return flowGPerS == null ? null : across.at(flow(flowGPerS, units));
    }

    /** One airflow alone, and the end of a table, have some room beside them. */
    private static Axis across(MixtureLine of, Units units) {
        double least = of.fromGPerS();
        double most = of.toGPerS();
        if (least == most) {
            least /= 1.5;
            most *= 1.5;
        }
        Double ends = of.tableEndsGPerS();
        if (ends != null && ends > most / 1.1) {
            most = ends * 1.1;
        }
        return Axis.logarithmic(flow(least, units), flow(most, units), Plot.LEFT, Plot.RIGHT);
    }

    /** From lean at the top to rich at the bottom, with 1 and, unless they are far off, the limits. */
    private static Axis up(MixtureLine of, double top) {
        double least = 1;
        double most = 1;
        for (double limit : new double[] {of.richLimit(), of.leanLimit()}) {
            if (limit >= LEAST_LIMIT && limit <= MOST_LIMIT) {
                least = Math.min(least, limit);
                most = Math.max(most, limit);
            }
        }
        for (Mixture mixture : all(of)) {
            Double low = mixture.lambdaLow();
            Double high = mixture.lambdaHigh();
            least = Math.min(least, Math.max(LEAST, low == null ? mixture.lambda() : low));
            most = Math.max(most, Math.min(MOST, high == null ? mixture.lambda() : high));
        }
        double more = Math.max(0.03, (most - least) * 0.08);
        return Axis.linear(least - more, most + more, BOTTOM, top);
    }

    private static List<Mixture> all(MixtureLine of) {
        return Stream.concat(
                        of.points().stream().map(Point::mixture),
                        of.spots().stream().flatMap(spot -> Stream.ofNullable(spot.mixture())))
                .toList();
    }

    private static List<Figures> figures(MixtureLine of, Units units, ToDoubleFunction<Mixture> figure) {
        return of.points().stream()
                .map(point -> new Figures(flow(point.flowGPerS(), units), figure.applyAsDouble(point.mixture())))
                .toList();
    }

    private static String band(MixtureLine of, Units units, Axis across, Axis up) {
        boolean banded = of.points().size() > 1
                && of.points().stream().allMatch(point -> point.mixture().lambdaLow() != null)
                && of.points().stream().anyMatch(point -> isSeen(point.mixture(), up));
        return banded
                ? Plot.area(
                        figures(of, units, mixture -> orLambda(mixture.lambdaHigh(), mixture)),
                        figures(of, units, mixture -> orLambda(mixture.lambdaLow(), mixture)),
                        across,
                        up)
                : "";
    }

    private static boolean isSeen(Mixture mixture, Axis up) {
        return orLambda(mixture.lambdaHigh(), mixture) > up.least()
                && orLambda(mixture.lambdaLow(), mixture) < up.most();
    }

    private static double orLambda(@Nullable Double figure, Mixture mixture) {
        return figure == null ? mixture.lambda() : figure;
    }

    private static List<Mark> marks(MixtureLine of, Units units, Axis across, Axis up) {
        List<Mark> marks = new ArrayList<>();
        for (Spot spot : of.spots()) {
            Mixture there = spot.mixture();
            if (there != null && up.holds(there.lambda())) {
                double x = across.at(flow(spot.flowGPerS(), units));
                double y = up.at(there.lambda());
                marks.add(new Mark(spot.named(), x, y, shape(spot.named(), x, y)));
            }
        }
        return marks;
    }

    private static String shape(Named named, double x, double y) {
        String at = "M" + Plot.place(x, y);
        return switch (named) {
            case IDLE -> at + "m-7 0l7 -7 7 7 -7 7z";
            case CRUISE -> at + "m-5.500 0a5.500 5.500 0 1 0 11 0a5.500 5.500 0 1 0 -11 0z";
            case PEAK -> at + "m-5 -5h10v10h-10z";
        };
    }

    /** The named airflows and, where lambda goes by the airflow, some in between. */
    private static List<Row> rows(MixtureLine of) {
        List<Row> rows = new ArrayList<>();
        of.spots().forEach(spot -> rows.add(new Row(spot.named(), spot.flowGPerS(), spot.mixture())));
        double first = of.points().get(0).mixture().lambda();
        boolean goes =
                of.points().stream().anyMatch(point -> Math.abs(point.mixture().lambda() - first) > 1e-9);
        for (int i = 0; goes && i < of.points().size(); i += EVERY) {
            Point point = of.points().get(i);
            if (of.spots().stream().noneMatch(spot -> spot.flowGPerS() == point.flowGPerS())) {
                rows.add(new Row(null, point.flowGPerS(), point.mixture()));
            }
        }
        rows.sort(Comparator.comparingDouble(Row::flowGPerS));
        return rows;
    }

    public boolean banded() {
        return rows.stream()
                .anyMatch(row -> row.mixture() != null && row.mixture().lambdaLow() != null);
    }

    public int bottom() {
        return BOTTOM;
    }
}
