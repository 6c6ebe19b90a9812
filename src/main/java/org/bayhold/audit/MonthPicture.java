package org.bayhold.audit;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;

/**
 * Months across, kinds of finding down; at each crossing a disc whose area tells how many, with the number in it. Lengths are
 * in the picture's own units.
 *
 * @param columns the months, the latest {@value #MOST_MONTHS}
 */
record MonthPicture(List<Column> columns, List<Row> rows) {
    private static final int MOST_MONTHS = 12;
    private static final int LEFT = 390;
    private static final int STEP = 62;
    private static final int TOP = 12;
    private static final int ROW = 52;
    private static final double LARGEST = 23;
    private static final double SMALLEST = 11;

    record Column(YearMonth month, int x) {}

    /** @param key of the row's name */
    record Row(String key, int y, List<Disc> discs) {}

    /** @param radius 0 where there is nothing */
    record Disc(YearMonth month, int count, int x, double radius) {}

    static MonthPicture of(Map<YearMonth, AuditSummary.Month> months) {
        List<YearMonth> shown = List.copyOf(months.keySet());
        shown = shown.subList(Math.max(0, shown.size() - MOST_MONTHS), shown.size());
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < shown.size(); i++) {
            columns.add(new Column(shown.get(i), LEFT + i * STEP));
        }
        int most = shown.stream()
                .mapToInt(month -> largest(java.util.Objects.requireNonNull(months.get(month))))
                .max()
                .orElse(0);
        List<Row> rows = new ArrayList<>();
        rows.add(row("audit.unmatched", 0, columns, months, AuditSummary.Month::unmatched, most));
        for (Finding finding : Finding.values()) {
            rows.add(row("finding." + finding, rows.size(), columns, months, month -> month.of(finding), most));
        }
        return new MonthPicture(columns, rows);
    }

    private static int largest(AuditSummary.Month month) {
        int most = month.unmatched();
        for (Finding finding : Finding.values()) {
            most = Math.max(most, month.of(finding));
        }
        return most;
    }

    private static Row row(
            String key,
            int number,
            List<Column> columns,
            Map<YearMonth, AuditSummary.Month> months,
            ToIntFunction<AuditSummary.Month> count,
            int most) {
        List<Disc> discs = new ArrayList<>();
        for (Column column : columns) {
            int n = count.applyAsInt(java.util.Objects.requireNonNull(months.get(column.month())));
            double radius = n == 0 ? 0 : Math.max(SMALLEST, LARGEST * Math.sqrt((double) n / most));
            discs.add(new Disc(column.month(), n, column.x(), radius));
        }
        return new Row(key, TOP + ROW / 2 + number * ROW, discs);
    }

    public int width() {
        return LEFT + columns.size() * STEP;
    }

    public int height() {
        return TOP + rows.size() * ROW + 30;
    }
}
