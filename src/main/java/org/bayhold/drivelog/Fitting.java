package org.bayhold.drivelog;

import java.util.List;
import org.bayhold.drivelog.EngineFacts.ExpectedScale;
import org.bayhold.drivelog.Fit.Agreement;
import org.bayhold.drivelog.FlowPoints.Point;
import org.jspecify.annotations.Nullable;

/** From points to scale and offset. {@code docs/drive-log.md, D10 and D11}. */
final class Fitting {
    private static final int LEAST_POINTS = 8;
    /** Below this, what multiplies and what adds look alike. */
    private static final double LEAST_SPAN = 2;

    private static final double AGREEING = 2;
    private static final int LEAST_OF_A_THIRD = 6;

    private Fitting() {}

    /** Null where there is too little, or too little difference in flow. */
    static @Nullable Fit fit(List<Point> points, AirSource source, @Nullable ExpectedScale expected) {
        double lowest = points.stream().mapToDouble(Point::flow).min().orElse(Double.NaN);
        double highest = points.stream().mapToDouble(Point::flow).max().orElse(Double.NaN);
        if (points.size() < LEAST_POINTS || !(highest / lowest >= LEAST_SPAN)) {
            return null;
        }
        double[][] columns = {
            points.stream().mapToDouble(point -> 1).toArray(),
            points.stream().mapToDouble(Point::inverseFlow).toArray()
        };
        RobustFit.Result result = fit(points, columns);
        if (result == null) {
            return null;
        }
        double scale = result.coefficient(0);
        double error = result.standardError(0);
        return new Fit(
                scale,
                error,
                result.coefficient(1) / 100,
                result.standardError(1) / 100,
                source,
                result.correlation(),
                expected == null ? null : agreement(scale, error, expected),
                points.stream()
                        .map(point -> new Fit.Point(
                                point.seconds(), point.flow(), point.trim(), point.firstRow(), point.lastRow()))
                        .toList());
    }

    /** Over time, of the points from one flow to another; NaN where there are none. */
    private static double mean(List<Point> points, double from, double to) {
        double seconds = 0;
        double sum = 0;
        for (Point point : points) {
            if (point.flow() >= from && point.flow() <= to) {
                seconds += point.seconds();
                sum += point.trim() * point.seconds();
            }
        }
        return sum / seconds;
    }

    private static RobustFit.@Nullable Result fit(List<Point> points, double[][] columns) {
        boolean[] follows = new boolean[points.size()];
        for (int i = 0; i < follows.length; i++) {
            follows[i] = points.get(i).follows();
        }
        return RobustFit.fit(
                columns,
                points.stream().mapToDouble(Point::trim).toArray(),
                points.stream().mapToDouble(Point::seconds).toArray(),
                follows);
    }

    static Agreement agreement(double scale, double standardError, ExpectedScale expected) {
        double within = AGREEING * standardError;
        if (Math.abs(scale - expected.percent()) <= within) {
            return Agreement.CONFIRMS;
        }
        return scale >= expected.lowPercent() - within && scale <= expected.highPercent() + within
                ? Agreement.WITHIN_BAND
                : Agreement.DIFFERS;
    }

    /**
     * By how much the trim rises over the top third of the flow.
     *
     * @param percent over the whole of that third
     * @param stepPercent between the means of its lower and of its upper half
     */
    record Rise(
            double percent,
            double standardError,
            double stepPercent,
            double fromFlow,
            double toFlow,
            long firstRow,
            long lastRow) {}

    /** Null where the top third holds too little. */
    static @Nullable Rise rise(List<Point> points) {
        double lowest = points.stream().mapToDouble(Point::flow).min().orElse(Double.NaN);
        double highest = points.stream().mapToDouble(Point::flow).max().orElse(Double.NaN);
        double from = lowest + (highest - lowest) * 2 / 3;
        List<Point> top = points.stream().filter(point -> point.flow() >= from).toList();
        if (top.size() < LEAST_OF_A_THIRD || !(highest / lowest >= LEAST_SPAN)) {
            return null;
        }
        double[][] columns = {
            top.stream().mapToDouble(point -> 1).toArray(),
            top.stream().mapToDouble(point -> point.flow() - from).toArray()
        };
        RobustFit.Result result = fit(top, columns);
        return result == null
                ? null
                : new Rise(
                        result.coefficient(1) * (highest - from),
                        result.standardError(1) * (highest - from),
                        mean(top, (from + highest) / 2, highest) - mean(top, from, (from + highest) / 2),
                        from,
                        highest,
                        top.stream().mapToLong(Point::firstRow).min().orElse(0),
                        top.stream().mapToLong(Point::lastRow).max().orElse(0));
    }
}
