package org.bayhold.drivelog;

import java.util.Arrays;
import java.util.List;
import org.bayhold.drivelog.Column.UnitFrom;
import org.bayhold.drivelog.Head.Row;
import org.jspecify.annotations.Nullable;

/**
 * What the numbers of a time column are. Where the file does not say, steps of 10 and more are milliseconds: nobody judges
 * a drive by a sample every ten seconds. {@code docs/drive-log.md, D5}.
 */
record TimeScale(double factor, double typicalSeconds) {
    private static final double MILLISECONDS_FROM = 10;

    /** @param column null where the file has no time */
    static TimeScale of(List<Row> body, int index, Numbers numbers, @Nullable Column column) {
        if (column == null || index < 0) {
            return new TimeScale(1, 0);
        }
        Unit unit = column.unit();
        Times times = new Times(numbers, 1);
        boolean allNumbers = true;
        double[] steps = new double[body.size()];
        int count = 0;
        double last = Double.NaN;
        for (Row row : body) {
            String text = row.field(index);
            allNumbers &= text.isBlank() || numbers.parse(text) != Numbers.NONE;
            double time = times.parse(text.toCharArray(), 0, text.length());
            if (time - last > 0 && Double.isFinite(time - last)) {
                steps[count] = time - last;
                count++;
            }
            last = Double.isFinite(time) ? time : last;
        }
        Arrays.sort(steps, 0, count);
        double step = count == 0 ? 0 : steps[count / 2];
        if (!allNumbers) {
            return new TimeScale(1, step);
        }
        double factor = step >= MILLISECONDS_FROM ? Unit.MILLISECONDS.factor() : 1;
        if (unit != null && column.unitFrom() != UnitFrom.ASSUMED) {
            factor = unit.factor();
        }
        return new TimeScale(factor, step * factor);
    }
}
