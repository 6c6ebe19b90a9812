package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.bayhold.drivelog.SentLog;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.Facts;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** Drives as evidence: docs/drive-log.md, D17, and {@code DRIVE_LOG_PASSED}. */
public abstract class DriveLogs implements OnADatabase {
    private static final String CHECK = "DRIVE_LOG_PASSED";

    private final long seed = Seed.OF_THIS_RUN;
    private FinishedCar finished;
    private Car car;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
    }

    @AfterEach
    void asItWas() {
        asksForLogs(false);
    }

    private void asksForLogs(boolean asked) {
        shop().as(Role.MANAGER)
                .put("/policy", Body.of("driveLogRequired", asked))
                .is(200);
    }

    private Answer sends(byte[] file) {
        return sends(car, file, Map.of());
    }

    private Answer sends(Car of, byte[] file, Map<String, String> fields) {
        return shop().as(Role.TECH).postFile(of.path("drive-logs"), file, fields);
    }

    private static List<String> codes(JsonNode findings) {
        return elements(findings).stream()
                .map(finding -> textOf(finding.path("code")))
                .toList();
    }

    @Test
    void aSoundDrivePassesAndClearsTheGate() {
        asksForLogs(true);
        assertThat(car.gate().outcome(CHECK)).isEqualTo("FAIL");

        Answer answer = sends(car, SentLog.sound(seed), Map.of("venue", "DYNO", "performedBy", "Tariq Boone"))
                .is(201);

        assertThat(answer.field("verdict")).as(answer.toString()).isEqualTo("PASS");
        assertThat(elements(answer.json().path("missing"))).isEmpty();
        assertThat(codes(answer.json().path("findings"))).contains("WITHIN_NORMAL_CORRECTION");
        assertThat(answer.json().path("fit").path("scaleStandardError").asDouble())
                .isPositive();
        assertThat(answer.json().path("headroomPercent").asDouble()).isBetween(50.0, 100.0);
        assertThat(car.gate().outcome(CHECK)).isEqualTo("PASS");
        car.gate().isClear();
        assertThat(car.record(answer.id())
                        .orElseThrow()
                        .path("record")
                        .path("verdict")
                        .asString())
                .isEqualTo("PASS");
    }

    @Test
    void aDriveThatFailsHoldsTheCarWhateverPolicySays() {
        Answer answer = sends(SentLog.ofALargerIntake(seed)).is(201);

        assertThat(answer.field("verdict")).isEqualTo("FAIL");
        assertThat(codes(answer.json().path("findings"))).contains("SCALE_ERROR");
        assertThat(answer.json().path("fit").path("scalePercent").asDouble()).isBetween(11.0, 14.0);
        assertThat(car.gate().outcome(CHECK)).isEqualTo("FAIL");
        car.asksToLeave().isHeld();
        car.strikesOut(answer);
        car.gate().isClear();
    }

    @Test
    void whatIsMissingIsSaidAndDoesNotPass() {
        asksForLogs(true);
        Answer answer = sends(SentLog.withoutFullLoad(seed)).is(201);

        assertThat(answer.field("verdict")).isEqualTo("INSUFFICIENT");
        assertThat(elements(answer.json().path("missing")))
                .anyMatch(code -> textOf(code).equals("FULL_LOAD"));
        assertThat(car.gate().reasonOf(CHECK)).contains("full load");
        car.asksToLeave().isHeld();
    }

    @Test
    void aSignOffRestsOnItAndFallsWithIt() {
        asksForLogs(true);
        Car next = shop().registers(Facts.aCar());
        next.fits(finished.intake());
        var calibration = shop().issues(RevisionDraft.forThe(next).covers(finished.intake()));
        next.flashes(calibration);
        next.readsBack(calibration);
        next.asksToClear("FLASHED").isProblem(409, "evidence-missing");
        Answer log = sends(next, SentLog.sound(seed), Map.of()).is(201);
        next.clears("FLASHED");
        next.acknowledges();
        next.gate().isClear();

        next.strikesOut(log);

        assertThat(next.openItem().causes()).contains("EVIDENCE_VOIDED");
        assertThat(next.gate().outcome(CHECK)).isEqualTo("FAIL");
    }

    @Test
    void theSameFileIsRecognised() {
        byte[] file = SentLog.sound(seed);
        Answer first = sends(file).is(201);
        int before = car.history().size();

        Answer second = sends(file).is(200);

        assertThat(second.id()).isEqualTo(first.id());
        assertThat(elements(second.json().path("warnings")))
                .anyMatch(code -> textOf(code).equals("FILE_ON_RECORD"));
        assertThat(car.history()).hasSize(before);
    }

    @Test
    void oneDriveIsNoEvidenceForALaterFlash() {
        byte[] file = SentLog.sound(seed);
        sends(file).is(201);
        car.flashes(finished.calibration());

        Answer answer = sends(file).isProblem(409, "conflict");

        assertThat(answer.json().path("errors").get(0).path("field").asString()).isEqualTo("file");
    }

    @Test
    void theSameFileOnAnotherCarIsWarnedOf() {
        byte[] file = SentLog.sound(seed);
        sends(file).is(201);

        Answer other = sends(shop().finishesACar().car(), file, Map.of()).is(201);

        assertThat(elements(other.json().path("warnings")))
                .anyMatch(code -> textOf(code).equals("FILE_ON_ANOTHER_CAR"));
    }

    @Test
    void aCallSentTwiceIsOneRecord() {
        Api tech = shop().as(Role.TECH).withKey(Api.newKey());
        byte[] file = SentLog.sound(seed);

        Answer first = tech.postFile(car.path("drive-logs"), file, Map.of()).is(201);
        Answer second = tech.postFile(car.path("drive-logs"), file, Map.of()).is(201);

        assertThat(second.json()).isEqualTo(first.json());
        tech.postFile(car.path("drive-logs"), SentLog.sound(seed + 1), Map.of()).isProblem(422, "idempotency-mismatch");
    }

    @Test
    void columnsAreReadAsTheCallerSays() {
        byte[] file = SentLog.withStrangeHeadings(seed);
        List<String> names = SentLog.headings(seed);
        StringBuilder columns = new StringBuilder();
        for (int i = 1; i < names.size(); i++) {
            String name = names.get(i).replaceFirst(" *\\(.*", "");
            columns.append(i == 1 ? "{" : ",").append("\"probe " + i + "\":\"" + name + "\"");
        }
        sends(file).isProblem(400, "invalid");
        Answer answer = sends(car, file, Map.of("columns", columns + "}")).is(201);

        assertThat(answer.field("verdict")).isEqualTo("PASS");
        Answer again = shop().as(Role.TECH)
                .post(car.path("drive-logs/" + answer.id() + "/judgements"), Body.empty())
                .is(201);
        assertThat(again.field("verdict")).isEqualTo("PASS");
        assertThat(again.field("again")).isEqualTo(answer.id());
    }

    @Test
    void theShopSaysOnceWhatItsHeadingsHold() {
        String heading = "probe of " + seed;
        byte[] file = new String(SentLog.sound(seed), StandardCharsets.UTF_8)
                .replaceFirst("Lambda,", heading + ",")
                .getBytes(StandardCharsets.UTF_8);
        assertThat(sends(file).is(201).field("verdict")).isEqualTo("INSUFFICIENT");

        shop().as(Role.TECH)
                .put("/drive-log-columns", Body.of(heading, "MEASURED_LAMBDA"))
                .isProblem(403, "forbidden");
        shop().as(Role.CALIBRATOR)
                .put("/drive-log-columns", Body.of(heading, "MEASURED_LAMBDA"))
                .is(200);

        Answer again = sends(file).is(201);
        assertThat(again.field("verdict")).isEqualTo("PASS");
        assertThat(again.json().path("columns").get(0).path("name").asString()).isEqualTo(heading);
    }

    @Test
    void aDriveIsJudgedAgainByAnotherPolicyAndTheOldVerdictStays() {
        Answer first = sends(SentLog.sound(seed)).is(201);
        shop().as(Role.MANAGER)
                .put("/policy", Body.of("driveLogThresholds", Body.of("fullLoadSeconds", 60)))
                .is(200);
        try {
            Answer again = shop().as(Role.TECH)
                    .post(car.path("drive-logs/" + first.id() + "/judgements"), Body.empty())
                    .is(201);
            assertThat(again.field("verdict")).isEqualTo("INSUFFICIENT");
            assertThat(again.field("effectiveAt")).isEqualTo(first.field("effectiveAt"));
        } finally {
            shop().as(Role.MANAGER)
                    .put("/policy", Body.of("driveLogThresholds", Body.of("fullLoadSeconds", 3)))
                    .is(200);
        }
        JsonNode kept = shop().as(Role.AUDITOR)
                .get(car.path("drive-logs/" + first.id()))
                .is(200)
                .json();
        assertThat(textOf(kept.path("verdict"))).isEqualTo("PASS");
    }

    @Test
    void theFileComesBackAsItWasSent() {
        byte[] file = SentLog.sound(seed);
        Answer answer = sends(file).is(201);

        byte[] back = shop().as(Role.AUDITOR).download(car.path("drive-logs/" + answer.id() + "/file"));

        assertThat(back).isEqualTo(file);
        assertThat(answer.json().path("fileBytes").asLong()).isEqualTo(file.length);
    }

    @Test
    void whatIsNoLogIsRefusedAndChangesNothing() {
        int before = car.history().size();

        for (String text : List.of("", "just words", "a,b\n1,2\n", "Time,RPM\nx,y\n")) {
            Answer answer = sends(text.getBytes(StandardCharsets.UTF_8)).isProblem(400, "invalid");
            assertThat(answer.json().path("errors").get(0).path("field").asString())
                    .isEqualTo("file");
        }
        byte[] file = SentLog.sound(seed);
        for (Map<String, String> wrong : List.of(
                Map.of("columns", "[]"),
                Map.of("columns", "{\"RPM\":\"WARP\"}"),
                Map.of("sampleSeconds", "-1"),
                Map.of("venue", "MOON"),
                Map.of("map", "track"),
                Map.of("effectiveAt", "yesterday"),
                Map.of("note", "\u0000"))) {
            sends(car, file, wrong).isProblem(400, "invalid");
        }
        assertThat(car.history()).hasSize(before);
    }

    @Test
    void theMapThatWasDrivenIsNamed() {
        asksForLogs(true);
        Car next = shop().registers(Facts.aCar());
        next.fits(finished.intake());
        var calibration = shop().issues(RevisionDraft.forThe(next)
                .covers(finished.intake())
                .with("maps", List.of(Body.of("name", "calm"), Body.of("name", "track"))));
        next.flashes(calibration);

        sends(next, SentLog.sound(seed), Map.of()).isProblem(400, "invalid");
        sends(next, SentLog.sound(seed), Map.of("map", "calm")).is(201);
        assertThat(next.gate().outcome(CHECK)).isEqualTo("FAIL");
        Answer track =
                sends(next, SentLog.sound(seed + 1), Map.of("map", "Track")).is(201);

        assertThat(track.field("map")).isEqualTo("track");
        assertThat(next.gate().outcome(CHECK)).isEqualTo("PASS");
    }

    @Test
    void aWriterLogsNoDrives() {
        shop().as(Role.WRITER)
                .postFile(car.path("drive-logs"), SentLog.sound(seed), Map.of())
                .isProblem(403, "forbidden");
    }
}
