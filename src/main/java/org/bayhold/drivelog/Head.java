package org.bayhold.drivelog;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.util.ArrayList;
import java.util.List;

/** The first rows of a file, cut at one separator. */
final class Head {
    static final int ROWS = 200;
    static final int COLUMNS = 4_096;
    /** Of one field; a quotation that never ends would go on to the end of the file. */
    static final int FIELD = 1 << 16;

    /** One row with its line. */
    record Row(long line, List<String> fields) {
        String field(int index) {
            return index >= 0 && index < fields.size() ? fields.get(index) : "";
        }

        /** Without what is empty at its end. */
        int width() {
            int width = fields.size();
            while (width > 0 && fields.get(width - 1).isBlank()) {
                width--;
            }
            return width;
        }
    }

    private static final class Rows extends AbstractBaseCsvCallbackHandler<Row> {
        private List<String> fields = new ArrayList<>();

        @Override
        protected void handleBegin(long line) {
            fields = new ArrayList<>();
        }

        @Override
        protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
            if (index < COLUMNS) {
                fields.add(new String(buffer, offset, length));
            }
        }

        @Override
        protected Row buildRecord() {
            return new Row(getStartingLineNumber(), List.copyOf(fields));
        }
    }

    private Head() {}

    static CsvReader.CsvReaderBuilder reader(char separator) {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .maxBufferSize(FIELD)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE);
    }

    /** As many rows as can be read; a quotation that goes wrong ends them. */
    static List<Row> rows(String text, char separator) {
        List<Row> rows = new ArrayList<>();
        try {
            for (Row row : reader(separator).build(new Rows(), text)) {
                if (row.width() > 0) {
                    rows.add(row);
                }
                if (rows.size() == ROWS) {
                    break;
                }
            }
        } catch (CsvParseException wrong) {
            return rows;
        }
        return rows;
    }
}
