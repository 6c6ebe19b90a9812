package org.bayhold.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.gate.Decision;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Sheet;
import org.junit.jupiter.api.Test;

/** A sheet ends at 1,048,576 rows (ECMA-376, the limit that spreadsheets state); what is more goes on on the next one. */
class XlsxRowsTest {
    @Test
    void whatDoesNotFitOnOneSheetGoesOnOnTheNext() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (XlsxRows rows = new XlsxRows(out, 4)) {
            for (int i = 0; i < 7; i++) {
                rows.add(row(i));
            }
        }
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(out.toByteArray()))) {
            List<Sheet> sheets = workbook.getSheets().toList();
            assertThat(sheets).extracting(Sheet::getName).containsExactly("Handovers", "Handovers 2", "Handovers 3");
            int rows = 0;
            for (Sheet sheet : sheets) {
                List<org.dhatim.fastexcel.reader.Row> read = sheet.read();
                assertThat(read.get(0).getCellText(0)).isEqualTo("handoffId");
                rows += read.size() - 1;
            }
            assertThat(rows).isEqualTo(7);
        }
        assertThat(XlsxRows.MOST_ROWS).isEqualTo(1_048_576);
    }

    private static AuditedHandoff row(int number) {
        Instant at = Instant.parse("2026-03-02T09:00:00Z").plusSeconds(number);
        return new AuditedHandoff(
                new UUID(1, number),
                new AuditedHandoff.Vehicle(new UUID(2, number), null, "FRAME-" + number, null, "@plain"),
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
