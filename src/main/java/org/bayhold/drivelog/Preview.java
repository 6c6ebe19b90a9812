package org.bayhold.drivelog;

import java.util.List;

/**
 * The beginning of a file, for a page on which its columns are mapped.
 *
 * @param header as it stands there
 * @param rows the first ones below it, a row of units left out
 * @param columns what is made of the header, in its order; of a file of readings, of the names in it
 * @param hasTime false where seconds between rows must be told
 */
public record Preview(
        String encoding,
        char separator,
        char decimalMark,
        boolean isOneRowAReading,
        long headerRow,
        List<String> header,
        List<List<String>> rows,
        List<Column> columns,
        boolean hasTime) {
    public Preview {
        header = List.copyOf(header);
        rows = rows.stream().map(List::copyOf).toList();
        columns = List.copyOf(columns);
    }
}
