package org.bayhold.drivelog;

import java.util.List;

/**
 * How a file is laid out.
 *
 * @param columns as the page shows them: of the header, or of the names that the first readings bear
 * @param headerRow the line of the header
 * @param firstRow the line at or behind which values begin
 * @param timeFactor by which a number in the time column becomes seconds
 * @param typicalSeconds between two moments at the beginning; 0 where it cannot be said
 */
record Layout(
        char separator,
        char decimal,
        Shape shape,
        List<Column> columns,
        long headerRow,
        long firstRow,
        double timeFactor,
        double typicalSeconds) {
    Layout {
        columns = List.copyOf(columns);
    }

    boolean has(Parameter parameter) {
        return columns.stream().anyMatch(column -> column.isRead() && column.parameter() == parameter);
    }
}
