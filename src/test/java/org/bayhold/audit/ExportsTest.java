package org.bayhold.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.gate.Decision;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Sheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables of the audit, as far as they are more than what a library does. */
class ExportsTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1",
                "@A1",
                "\t=1+1",
                "\r=1",
                "\n=1",
                " =1+1",
                "\u00A0=1",
                "\uFF1D1",
                "\u3000\uFF1D1"
            })
    void whatASpreadsheetWouldRunIsMadeHarmless(String typed) {
        assertThat(CsvRows.cell(typed)).isEqualTo("'" + typed);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Northwind 2.0", "B-XY 12", "a=b", "1.5", "'quoted"})
    void everythingElseStaysAsItIs(String typed) {
        assertThat(CsvRows.cell(typed)).isEqualTo(typed);
    }

    @Test
    void whatDoesNotFitOnASheetGoesOnOnTheNext() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (XlsxRows rows = new XlsxRows(bytes, 4)) {
            for (int i = 0; i < 7; i++) {
                rows.add(row("car " + i));
            }
        }
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes.toByteArray()))) {
            List<Sheet> sheets = workbook.getSheets().toList();
            assertThat(sheets).extracting(Sheet::getName).containsExactly("Handovers", "Handovers 2", "Handovers 3");
            assertThat(descriptions(sheets.get(0))).containsExactly("description", "car 0", "car 1", "car 2");
            assertThat(descriptions(sheets.get(1))).containsExactly("description", "car 3", "car 4", "car 5");
            assertThat(descriptions(sheets.get(2))).containsExactly("description", "car 6");
        }
    }

    @Test
    void aSheetTakesAsManyRowsAsTheFormatAllows() {
        assertThat(XlsxRows.MOST_ROWS).isEqualTo(1_048_576);
    }

    /** A workbook that is collected before it goes out would show nothing until its end. */
    @Test
    void aWorkbookGoesOutWhileItIsWritten() throws IOException {
        long[] written = {0};
        OutputStream counting = new OutputStream() {
            @Override
            public void write(int b) {
                written[0]++;
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                written[0] += length;
            }
        };
        try (XlsxRows rows = new XlsxRows(counting)) {
            for (int i = 0; i < 20_000; i++) {
                rows.add(row("car " + UUID.randomUUID()));
            }
            assertThat(written[0]).isGreaterThan(500_000);
        }
    }

    private static List<String> descriptions(Sheet sheet) throws IOException {
        int column = Columns.ALL.stream().map(Columns.Column::name).toList().indexOf("description");
        return sheet.read().stream().map(row -> row.getCellText(column)).toList();
    }

    private static AuditedHandoff row(String description) {
        Instant at = Instant.parse("2026-03-01T12:00:00Z");
        return new AuditedHandoff(
                UUID.randomUUID(),
                new AuditedHandoff.Vehicle(UUID.randomUUID(), null, "F-1", null, description),
                at,
                at,
                Fact.HandoffBasis.CLEAR,
                Decision.Verdict.CLEAR,
                List.of(),
                Decision.Verdict.CLEAR,
                List.of(),
                Decision.Verdict.CLEAR,
                List.of(),
                List.of(),
                null,
                null,
                BigDecimal.ZERO,
                null,
                null,
                false,
                "writer");
    }
}
