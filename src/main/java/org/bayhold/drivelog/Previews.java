package org.bayhold.drivelog;

import java.util.List;
import org.bayhold.drivelog.Head.Row;

/** What a page shows of the beginning of a file; only what is no table at all is refused. */
final class Previews {
    private static final int ROWS = 20;

    private Previews() {}

    static Preview of(TextSource source, Recognition recognition) throws RefusedLogException {
        String text = source.head();
        try {
            Layout layout = new LayoutFinder(recognition, true).find(text);
            return preview(Head.rows(text, layout.separator()), layout, source);
        } catch (RefusedLogException refused) {
            if (refused.reason() != Refused.NO_RECOGNISED_PARAMETER) {
                throw refused;
            }
            return ofNothingRecognised(text, source, refused);
        }
    }

    private static Preview ofNothingRecognised(String text, TextSource source, RefusedLogException refused)
            throws RefusedLogException {
        for (char separator : LayoutFinder.SEPARATORS) {
            List<Row> all = Head.rows(text, separator);
            long header = LayoutFinder.tableRow(all);
            if (header > 0) {
                Layout plain =
                        new Layout(separator, '.', new Shape.Samples(List.of()), List.of(), header, header + 1, 1, 0);
                return preview(all, plain, source);
            }
        }
        throw refused;
    }

    private static Preview preview(List<Row> all, Layout layout, TextSource source) {
        List<String> header = all.stream()
                .filter(row -> row.line() == layout.headerRow())
                .findFirst()
                .map(Row::fields)
                .orElse(List.of());
        return new Preview(
                source.charset().name(),
                layout.separator(),
                layout.decimal(),
                layout.shape() instanceof Shape.Readings,
                layout.headerRow(),
                header,
                all.stream()
                        .filter(row -> row.line() >= layout.firstRow())
                        .limit(ROWS)
                        .map(Row::fields)
                        .toList(),
                layout.columns().isEmpty()
                        ? header.stream().map(Column::unknown).toList()
                        : layout.columns(),
                layout.has(Parameter.TIME));
    }
}
