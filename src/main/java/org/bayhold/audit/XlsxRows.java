package org.bayhold.audit;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.jspecify.annotations.Nullable;

/**
 * A workbook that goes out while it is written. Text stands in the cells themselves, never as a formula and never in a
 * table of strings, which would grow with the rows. What does not fit on one sheet goes on on the next.
 */
final class XlsxRows implements ExportRows {
    /** The rows of a sheet in OOXML, the line of names among them. */
    static final int MOST_ROWS = Worksheet.MAX_ROWS;

    private static final int FLUSHED_EVERY = 500;

    private final Workbook workbook;
    private final int mostRows;
    private Worksheet sheet;
    private int sheets;
    private int next;

    XlsxRows(OutputStream out) {
        this(out, MOST_ROWS);
    }

    /** With smaller sheets, for a test of where they end. */
    XlsxRows(OutputStream out, int mostRows) {
        this.workbook = new Workbook(out, "Bayhold", "1.0");
        this.mostRows = mostRows;
        this.sheet = newSheet();
    }

    private Worksheet newSheet() {
        sheets++;
        Worksheet fresh = workbook.newWorksheet(sheets == 1 ? "Handovers" : "Handovers " + sheets);
        fresh.freezePane(0, 1);
        for (int column = 0; column < Columns.ALL.size(); column++) {
            fresh.inlineString(0, column, Columns.ALL.get(column).name());
        }
        next = 1;
        return fresh;
    }

    @Override
    public void add(AuditedHandoff row) {
        try {
            if (next == mostRows) {
                sheet.finish();
                sheet = newSheet();
            }
            for (int column = 0; column < Columns.ALL.size(); column++) {
                cell(column, Columns.ALL.get(column).cell().apply(row));
            }
            next++;
            if (next % FLUSHED_EVERY == 0) {
                sheet.flush();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void cell(int column, @Nullable Object value) {
        if (value instanceof Number number) {
            sheet.value(next, column, number);
        } else if (value instanceof Boolean truth) {
            sheet.value(next, column, truth);
        } else if (value != null && !value.toString().isEmpty()) {
            sheet.inlineString(next, column, value.toString());
        }
    }

    @Override
    public void close() throws IOException {
        workbook.finish();
    }
}
