package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Audit;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How the audit is asked for, and the forms in which it answers. */
public abstract class AuditAnswers implements OnADatabase {
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final String WOULD_RUN = "=HYPERLINK(\"http://elsewhere.example\";\"a car\")";
    private static final List<String> COLUMNS = List.of(
            "handoffId",
            "vehicleId",
            "vin",
            "frameNumber",
            "plate",
            "description",
            "handedOffAt",
            "recordedAt",
            "basis",
            "decidedThen",
            "failedThen",
            "knownThen",
            "failedKnownThen",
            "knownNow",
            "failedKnownNow",
            "findings",
            "unmatchedSince",
            "matchedAgainAt",
            "daysUnmatched",
            "stillUnmatchedSince",
            "returnedAt",
            "voided",
            "handedOffBy");

    @Test
    void asCommaSeparatedValues() {
        Answer handoff = aCarThatWouldRunLeaves();

        Answer csv = auditor().withHeader("Accept", "text/csv").get("/audit/handoffs" + since(handoff));

        csv.is(200);
        assertThat(csv.header("Content-Type")).startsWith("text/csv");
        assertThat(csv.header("Content-Disposition")).contains("handovers.csv");
        assertThat(csv.text()).startsWith(String.join(",", COLUMNS) + "\r\n");
        NamedCsvRecord row = CsvReader.builder().ofNamedCsvRecord(csv.text()).stream()
                .filter(record -> record.getField("handoffId").equals(handoff.id()))
                .findFirst()
                .orElseThrow();
        assertThat(row.getField("description")).isEqualTo("'" + WOULD_RUN);
        assertThat(row.getField("plate")).isEqualTo("'@SUM(A1)");
        assertThat(row.getField("decidedThen")).isEqualTo("HOLD");
        assertThat(row.getField("findings")).isEqualTo("EXCEPTION");
        assertThat(row.getField("failedKnownNow")).contains("PARTS_COVERED RETUNE_CLEARED".split(" "));
        assertThat(Double.parseDouble(row.getField("daysUnmatched"))).isBetween(0.0, 0.1);
        assertThat(Instant.parse(row.getField("unmatchedSince")))
                .isBetween(
                        Instant.parse(handoff.field("effectiveAt")).minusMillis(1),
                        Instant.parse(handoff.field("effectiveAt")));
    }

    @Test
    void asAWorkbook() throws IOException {
        Answer handoff = aCarThatWouldRunLeaves();

        byte[] bytes = auditor().withHeader("Accept", XLSX).download("/audit/handoffs" + since(handoff));

        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            List<Row> rows = workbook.getFirstSheet().read();
            assertThat(texts(rows.get(0))).isEqualTo(COLUMNS);
            Row row = rows.stream()
                    .filter(line -> line.getCellText(0).equals(handoff.id()))
                    .findFirst()
                    .orElseThrow();
            assertThat(row.getCellText(COLUMNS.indexOf("description"))).isEqualTo(WOULD_RUN);
            assertThat(row.getCellAsNumber(COLUMNS.indexOf("daysUnmatched"))).isPresent();
            assertThat(row.getCellAsBoolean(COLUMNS.indexOf("voided"))).contains(false);
            assertThat(row.stream().filter(cell -> cell != null && cell.getFormula() != null))
                    .as("what runs when the workbook is opened")
                    .isEmpty();
        }
    }

    private static List<String> texts(Row row) {
        return row.stream().map(Cell::getText).toList();
    }

    @Test
    void aPeriodWithoutHandoversIsAnEmptyAnswerWithItsHeader() throws IOException {
        String longAgo = "/audit/handoffs?from=1999-01-01T00:00:00Z&to=1999-02-01T00:00:00Z";

        assertThat(auditor().get(longAgo).is(200).text()).isEqualTo("[]");
        assertThat(auditor()
                        .withHeader("Accept", "text/csv")
                        .get(longAgo)
                        .is(200)
                        .text())
                .isEqualTo(String.join(",", COLUMNS) + "\r\n");
        byte[] bytes = auditor().withHeader("Accept", XLSX).download(longAgo);
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            assertThat(workbook.getFirstSheet().read())
                    .singleElement()
                    .satisfies(row -> assertThat(texts(row)).isEqualTo(COLUMNS));
        }
    }

    @Test
    void theBestLikedFormIsSent() {
        String none = "/audit/handoffs?to=1999-02-01T00:00:00Z";

        assertThat(auditor()
                        .withHeader("Accept", "application/json;q=0.5, text/csv")
                        .get(none)
                        .header("Content-Type"))
                .startsWith("text/csv");
        assertThat(auditor().withHeader("Accept", "*/*").get(none).header("Content-Type"))
                .startsWith("application/json");
        auditor().withHeader("Accept", "image/png").get(none).isProblem(406, "not-acceptable");
    }

    @Test
    void periodsAreClosedOpen() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        Instant at = Instant.parse(handoff.field("effectiveAt"));

        assertThat(ids("?from=" + at)).contains(handoff.id());
        assertThat(ids("?from=" + at.plusMillis(1))).doesNotContain(handoff.id());
        assertThat(ids("?to=" + at)).doesNotContain(handoff.id());
        assertThat(ids("?from=" + at + "&to=" + at.plusMillis(1))).contains(handoff.id());
        assertThat(ids("?from=" + at + "&to=" + at)).isEmpty();
        // the month that is not over yet
        assertThat(ids("?from=" + at + "&to=" + at.plusSeconds(1_000_000))).contains(handoff.id());
    }

    @Test
    void byFindingPersonAndWhetherItIsStillSo() {
        Answer released = aCarThatWouldRunLeaves();
        FinishedCar finished = shop().finishesACar();
        Answer clear = finished.car().handsOver();
        Answer late = shop().finishesACar().car().handsOver();
        carOf(late).changes(fit(shop().aPartFor("DOWNPIPE")).at(Instant.parse(late.field("effectiveAt"))));
        String since = since(released) + "&";

        assertThat(ids(since + "finding=EXCEPTION")).contains(released.id()).doesNotContain(clear.id(), late.id());
        assertThat(ids(since + "finding=LATE_RECORD")).contains(late.id()).doesNotContain(clear.id(), released.id());
        assertThat(ids(since + "finding=LATE_RECORD&finding=EXCEPTION"))
                .contains(late.id(), released.id())
                .doesNotContain(clear.id());
        assertThat(ids(since + "unmatched=true"))
                .contains(released.id(), late.id())
                .doesNotContain(clear.id());
        assertThat(ids(since + "unmatched=false")).contains(clear.id()).doesNotContain(released.id(), late.id());
        assertThat(ids(since + "person=writer")).contains(clear.id(), late.id()).doesNotContain(released.id());
        assertThat(ids(since + "person=manager&finding=EXCEPTION")).contains(released.id());
    }

    @Test
    void goesOnWhereItStopped() {
        Car twice = shop().finishesACar().car();
        Answer first = twice.handsOver();
        twice.acknowledges();
        twice.handsOver();
        shop().finishesACar().car().handsOver();
        String since = since(first);
        List<String> whole = ids(since);
        assertThat(whole).hasSizeGreaterThanOrEqualTo(3);

        List<String> pieces = new ArrayList<>();
        List<String> piece = ids(since + "&limit=1");
        while (!piece.isEmpty()) {
            pieces.addAll(piece);
            piece = ids(since + "&limit=1&after=" + piece.get(0));
        }

        assertThat(pieces).isEqualTo(whole);
        assertThat(ids(since + "&limit=2")).isEqualTo(whole.subList(0, 2));
    }

    @Test
    void whatMakesNoSenseIsRefused() {
        auditor()
                .get("/audit/handoffs?from=2026-03-01T00:00:00Z&to=2026-02-01T00:00:00Z")
                .isInvalid("from")
                .isInvalid("to");
        Instant tomorrow = Instant.now().plusSeconds(86_400);
        auditor().get("/audit/handoffs?from=" + tomorrow).isInvalid("from");
        auditor().get("/audit/handoffs?knownAt=" + tomorrow).isInvalid("knownAt");
        Answer unknown = auditor().get("/audit/handoffs?finding=BAD_LUCK").isInvalid("finding");
        assertThat(unknown.text()).contains("WITHDRAWN_SINCE");
        auditor().get("/audit/handoffs?site=Northside").isInvalid("site");
        auditor().get("/audit/handoffs?person=nobody").isInvalid("person");
        auditor()
                .get("/audit/handoffs?after=00000000-0000-7000-8000-000000000009")
                .isInvalid("after");
        auditor().get("/audit/handoffs?from=yesterday").isInvalid("from");
        auditor().get("/audit/handoffs?limit=0").isInvalid("limit");
        auditor().get("/audit/handoffs?unmatched=perhaps").isInvalid("unmatched");
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/csv", XLSX, "application/json"})
    void aRefusalIsAProblemInWhateverFormTheRowsWereWanted(String form) {
        auditor()
                .withHeader("Accept", form)
                .get("/audit/handoffs?site=Northside")
                .isInvalid("site");
    }

    @Test
    void whatIsKnownSinceAMomentIsProvisional() {
        String none = "/audit/handoffs?to=1999-02-01T00:00:00Z";

        assertThat(auditor().get(none).header("Bayhold-Provisional")).isEqualTo("true");
        assertThat(auditor()
                        .get(none + "&knownAt=" + Instant.now().minusSeconds(60))
                        .header("Bayhold-Provisional"))
                .isEqualTo("false");
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void onlyManagersAndAuditorsSeeTheAudit(Role role) {
        for (String path : List.of("/audit/handoffs?to=1999-02-01T00:00:00Z", "/audit/exposures")) {
            Answer answer = shop().as(role).get(path);
            if (role == Role.MANAGER || role == Role.AUDITOR) {
                answer.is(200);
            } else {
                answer.isProblem(403, "forbidden");
            }
        }
    }

    /** An exception for a car whose names would run in a spreadsheet. */
    private Answer aCarThatWouldRunLeaves() {
        Car car = shop().registers(aCar().with("description", WOULD_RUN).with("plate", "@SUM(A1)"));
        car.fits(shop().aPartFor("DOWNPIPE"));
        return car.asksToLeaveByException(exception()).is(201);
    }

    private Car carOf(Answer handoff) {
        return shop().find(handoff.field("vehicleId"));
    }

    private static String since(Answer handoff) {
        return "?from=" + handoff.field("effectiveAt");
    }

    private List<String> ids(String query) {
        return new Audit(shop())
                .rows(query).stream().map(row -> row.text("handoffId")).toList();
    }

    private Api auditor() {
        return shop().as(Role.AUDITOR);
    }
}
