package org.bayhold.audit;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** RFC 4180 in UTF-8, with one line of names. What a spreadsheet would take for a formula is made harmless. */
final class CsvRows implements ExportRows {
    /** What begins a formula somewhere (OWASP, "CSV Injection"), the full-width forms with it. */
    private static final String BEGIN_A_FORMULA = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private final CsvWriter csv;

    CsvRows(OutputStream out) {
        this.csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out, StandardCharsets.UTF_8);
        csv.writeRecord(Columns.ALL.stream().map(Columns.Column::name).toList());
    }

    @Override
    public void add(AuditedHandoff row) {
        CsvWriter.CsvWriterRecord line = csv.writeRecord();
        for (Columns.Column column : Columns.ALL) {
            line.writeField(cell(column.cell().apply(row)));
        }
        line.endRecord();
    }

    /** Only text that somebody typed can begin like a formula: no number here is below zero. */
    static String cell(@Nullable Object value) {
        String text = value == null ? "" : value.toString();
        int first = 0;
        while (first < text.length() && isBlank(text.charAt(first)) && !beginsAFormula(text.charAt(first))) {
            first++;
        }
        return first < text.length() && beginsAFormula(text.charAt(first)) ? "'" + text : text;
    }

    private static boolean isBlank(char letter) {
        return Character.isWhitespace(letter) || Character.isSpaceChar(letter);
    }

    private static boolean beginsAFormula(char letter) {
        return BEGIN_A_FORMULA.indexOf(letter) >= 0;
    }

    @Override
    public void flush() {
        try {
            csv.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        csv.close();
    }
}
