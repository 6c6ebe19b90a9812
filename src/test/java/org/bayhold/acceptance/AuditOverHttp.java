package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Audit;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** The audit as it is asked for: periods, filters, formats, pages, and what makes no sense. */
public abstract class AuditOverHttp implements OnADatabase {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    @Test
    void thePeriodHasItsFirstMomentAndNotItsLast() {
        Answer handoff = leftByException("=1+1");
        Instant at = Instant.parse(handoff.field("effectiveAt"));
        Instant just = at.plusNanos(1_000);

        assertThat(ids("?from=" + at + "&to=" + just)).contains(handoff.id());
        assertThat(ids("?to=" + at)).doesNotContain(handoff.id());
        assertThat(ids("?from=" + just)).doesNotContain(handoff.id());
    }

    @Test
    void aPeriodWithoutHandoversIsAnEmptyAnswerInEveryFormat() throws IOException {
        String period = "?from=2001-01-01T00:00:00Z&to=2001-02-01T00:00:00Z";

        assertThat(audit().rows(period)).isEmpty();
        assertThat(csv(period)).isEmpty();
        try (ReadableWorkbook workbook = xlsx(period)) {
            assertThat(workbook.getFirstSheet().read()).hasSize(1);
        }
    }

    @Test
    void filtersLeaveOutWhatIsNotAskedFor() {
        Answer handoff = leftByException("plain");

        assertThat(ids("?finding=EXCEPTION")).contains(handoff.id());
        assertThat(ids("?finding=VOIDED_CAUSE")).doesNotContain(handoff.id());
        assertThat(ids("?person=" + Role.MANAGER.user())).contains(handoff.id());
        assertThat(ids("?person=" + Role.WRITER.user())).doesNotContain(handoff.id());
        assertThat(ids("?unmatched=true")).contains(handoff.id());
        assertThat(ids("?unmatched=false")).doesNotContain(handoff.id());
    }

    @Test
    void pagesOfAFewGiveTheWhole() {
        leftByException("one");
        leftByException("two");
        leftByException("three");
        String until = "?to=" + Instant.now();
        List<String> whole = ids(until);

        List<String> paged = Stream.iterate(
                        ids(until + "&limit=2"),
                        page -> !page.isEmpty(),
                        page -> ids(until + "&limit=2&after=" + page.get(page.size() - 1)))
                .flatMap(List::stream)
                .toList();

        assertThat(paged).isEqualTo(whole).hasSizeGreaterThan(2);
    }

    @Test
    void theSameInEveryFormatAndNoFormulaRuns() throws IOException {
        Answer handoff = leftByException("=HYPERLINK(\"http://elsewhere.example\")");
        Audit.Row json = audit().of(handoff);

        NamedCsvRecord csv = csv("").stream()
                .filter(record -> record.getField("handoffId").equals(handoff.id()))
                .findFirst()
                .orElseThrow();
        assertThat(csv.getField("description")).isEqualTo("'=HYPERLINK(\"http://elsewhere.example\")");
        assertThat(csv.getField("basis")).isEqualTo("EXCEPTION");
        assertThat(csv.getField("findings")).isEqualTo("EXCEPTION");
        assertThat(csv.getField("failedThen").split(" ")).containsExactlyElementsOf(json.list("failedThen"));
        assertThat(Instant.parse(csv.getField("unmatchedSince")))
                .isCloseTo(
                        Instant.parse(json.text("unmatchedSince")),
                        new org.assertj.core.data.TemporalUnitWithinOffset(1, java.time.temporal.ChronoUnit.MILLIS));

        try (ReadableWorkbook workbook = xlsx("")) {
            List<Row> rows = workbook.getFirstSheet().read();
            int description = column(rows.get(0), "description");
            Row row = rows.stream()
                    .filter(any ->
                            any.getCellText(column(rows.get(0), "handoffId")).equals(handoff.id()))
                    .findFirst()
                    .orElseThrow();
            assertThat(row.getCell(description).getFormula()).isNull();
            assertThat(row.getCellText(description)).contains("HYPERLINK");
        }
    }

    @Test
    void whatMakesNoSenseIsRefusedWithItsField() {
        String later = Instant.now().plus(Duration.ofDays(2)).toString();
        audit().ask("?from=2026-02-01T00:00:00Z&to=2026-01-01T00:00:00Z").isInvalid("from");
        audit().ask("?knownAt=" + later).isInvalid("knownAt");
        audit().ask("?from=" + later).isInvalid("from");
        audit().ask("?finding=NO_SUCH").is(400);
        audit().ask("?person=nobody-at-all").isInvalid("person");
        audit().ask("?site=elsewhere").isInvalid("site");
        audit().ask("?limit=0").is(400);
        shop().as(Role.WRITER).get("/audit/handoffs").is(403);
        shop().as(Role.AUDITOR)
                .withHeader("Accept", "application/pdf")
                .get("/audit/handoffs")
                .is(406);
    }

    @Test
    void whomToCallIsToldLongestFirstAndToThoseWhoMayCall() {
        Car first = exposed();
        Car second = exposed();

        List<Answer> pages = shop().as(Role.MANAGER).pages("/audit/exposures");
        List<String> cars = pages.stream()
                .flatMap(page -> Answer.elements(page.json().path("items")).stream())
                .map(item -> Answer.textOf(item.path("vehicle").path("id")))
                .toList();
        assertThat(cars).containsSubsequence(first.id(), second.id());
        assertThat(pages.get(0).text()).contains("+1 555 0142");
        assertThat(shop().as(Role.AUDITOR).get("/audit/exposures").is(200).text())
                .doesNotContain("+1 555 0142");

        shop().as(Role.WRITER).post(second.path("arrivals"), Body.empty()).is(201);
        assertThat(shop().as(Role.MANAGER).get("/audit/exposures").is(200).text())
                .contains(first.id())
                .doesNotContain(second.id());
    }

    private Car exposed() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("DOWNPIPE"));
        car.asksToLeaveByException(exception()).is(201);
        return car;
    }

    private Answer leftByException(String description) {
        Car car = shop().registers(aCar().with("description", description));
        car.fits(shop().aPartFor("DOWNPIPE"));
        return car.asksToLeaveByException(exception()).is(201);
    }

    private Audit audit() {
        return new Audit(shop());
    }

    private List<String> ids(String query) {
        return audit().rows(query).stream().map(row -> row.text("handoffId")).toList();
    }

    private List<NamedCsvRecord> csv(String query) {
        Answer answer = shop().as(Role.AUDITOR)
                .withHeader("Accept", "text/csv")
                .get("/audit/handoffs" + query)
                .is(200);
        return CsvReader.builder().ofNamedCsvRecord(answer.text()).stream().toList();
    }

    private ReadableWorkbook xlsx(String query) throws IOException {
        return new ReadableWorkbook(new ByteArrayInputStream(
                shop().as(Role.AUDITOR).withHeader("Accept", XLSX).download("/audit/handoffs" + query)));
    }

    private static int column(Row names, String name) {
        for (int i = 0; i < names.getCellCount(); i++) {
            if (names.getCellText(i).equals(name)) {
                return i;
            }
        }
        throw new AssertionError("no column " + name);
    }
}
