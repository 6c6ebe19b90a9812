package org.bayhold.drives;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bayhold.drivelog.Fit.Point;

/**
 * As many points as a picture can show, at most {@value #MOST}: those of about one airflow are gathered by their trim, so that
 * how far they scatter is still seen. Seconds, and means weighted by them, are kept. Pure.
 */
final class Thinned {
    static final int MOST = 200;
    private static final int COLUMNS = 40;

    private Thinned() {}

    /** By rising airflow, and within a column by rising trim; as they are where they are few enough. */
    static List<Point> of(List<Point> points) {
        if (points.size() <= MOST) {
            return points;
        }
        List<Point> thinned = new ArrayList<>();
        for (List<Point> column : columns(points, COLUMNS)) {
            List<Point> rising = column.stream()
                    .sorted(Comparator.comparingDouble(Point::trimPercent).thenComparingLong(Point::firstRow))
                    .toList();
            int groups = Math.min(MOST / COLUMNS, rising.size());
            for (int i = 0; i < groups; i++) {
                thinned.add(mean(rising.subList(i * rising.size() / groups, (i + 1) * rising.size() / groups)));
            }
        }
        return thinned;
    }

    /** By equal ratios of airflow; those without a point are left out. */
    static List<List<Point>> columns(List<Point> points, int count) {
        double least = points.stream().mapToDouble(Point::flowGPerS).min().orElseThrow();
        double most = points.stream().mapToDouble(Point::flowGPerS).max().orElseThrow();
        List<List<Point>> columns = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            columns.add(new ArrayList<>());
        }
        for (Point point : points) {
            double part = most > least ? Math.log(point.flowGPerS() / least) / Math.log(most / least) : 0;
            columns.get((int) Math.max(0, Math.min(count - 1, part * count))).add(point);
        }
        columns.removeIf(List::isEmpty);
        return columns;
    }

    static Point mean(List<Point> points) {
        double seconds = 0;
        double flow = 0;
        double trim = 0;
        long firstRow = Long.MAX_VALUE;
        long lastRow = 0;
        for (Point point : points) {
            seconds += point.seconds();
            flow += point.flowGPerS() * point.seconds();
            trim += point.trimPercent() * point.seconds();
            firstRow = Math.min(firstRow, point.firstRow());
            lastRow = Math.max(lastRow, point.lastRow());
        }
        return new Point(seconds, flow / seconds, trim / seconds, firstRow, lastRow);
    }
}
