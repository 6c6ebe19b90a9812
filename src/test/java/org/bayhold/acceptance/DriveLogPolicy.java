package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Whether a drive log is asked for, and what its check calls normal. docs/drive-log.md, D16; docs/rules.md, "Gate checks". */
public abstract class DriveLogPolicy implements OnADatabase {
    private static final String THRESHOLDS = "driveLogThresholds";
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @Test
    void theThresholdsInForceAreAlwaysAnsweredWhole() {
        JsonNode said = shop().policy().path(THRESHOLDS);

        assertThat(JSON.treeToValue(said, Thresholds.class)).isEqualTo(Thresholds.DEFAULTS);
        assertThat(said.propertyNames()).hasSize(Thresholds.class.getRecordComponents().length);
        assertThat(said.path("warmCoolantC").doubleValue()).isEqualTo(70);
        assertThat(said.path("needsLambda").booleanValue()).isTrue();
    }

    @Test
    void aThresholdThatIsLeftOutKeepsItsValue() {
        shop().whilePolicySays(THRESHOLDS, Body.of("cruiseTrimPercent", 4.25).with("knockDegrees", 0), () -> {
            Answer set = sets(Body.of("needsLambda", false)
                            .with("cellTrimPercent", 8)
                            .with("warmCoolantC", null))
                    .is(200);

            JsonNode answered = set.json().path(THRESHOLDS);
            assertThat(answered.path("cruiseTrimPercent").doubleValue()).isEqualTo(4.25);
            assertThat(answered.path("knockDegrees").doubleValue()).isZero();
            assertThat(answered.path("cellTrimPercent").doubleValue()).isEqualTo(8);
            assertThat(answered.path("needsLambda").booleanValue()).isFalse();
            assertThat(answered.path("warmCoolantC").doubleValue()).isEqualTo(70);
            assertThat(shop().policy().path(THRESHOLDS)).isEqualTo(answered);

            JsonNode hours = shop().as(Role.MANAGER)
                    .put("/policy", Body.of("readBackMaxAgeHours", 24))
                    .is(200)
                    .json();
            assertThat(hours.path(THRESHOLDS)).isEqualTo(answered);
        });
        assertThat(JSON.treeToValue(shop().policy().path(THRESHOLDS), Thresholds.class))
                .isEqualTo(Thresholds.DEFAULTS);
    }

    @ParameterizedTest
    @CsvSource({
        "warmCoolantC,40,110",
        "idleSeconds,10,1800",
        "cruiseSeconds,30,7200",
        "fullLoadSeconds,0,60",
        "fullLoadPedalPercent,50,95",
        "pullSeconds,1,10",
        "badSharePercent,0,50",
        "cruiseTrimPercent,1,20",
        "cellTrimPercent,1,25",
        "cellSeconds,2,120",
        "bankPercent,1,20",
        "leakPercent,1,20",
        "deliveryPercent,1,20",
        "limitSharePercent,0,20",
        "learnedPercent,0,25",
        "lambdaPercent,1,10",
        "boostPercent,1,20",
        "knockDegrees,0,15",
        "dutyPercent,50,100"
    })
    void eachHasBoundsOfItsOwn(String name, int least, int most) {
        for (int bound : new int[] {least, most}) {
            shop().whilePolicySays(
                            THRESHOLDS,
                            Body.of(name, bound),
                            () -> assertThat(shop().policy()
                                            .path(THRESHOLDS)
                                            .path(name)
                                            .doubleValue())
                                    .isEqualTo(bound));
        }
        String before = shop().policy().toString();
        for (double beyond : new double[] {least - 0.001, most + 0.001}) {
            assertThat(message(sets(Body.of(name, beyond)).isInvalid(THRESHOLDS + "." + name)))
                    .matches(name + " must be a number from " + least + " ?\\D* to " + most + " ?\\D*\\.");
        }
        assertThat(shop().policy()).hasToString(before);
    }

    static Stream<List<@Nullable Object>> nonsense() {
        return Stream.of(
                List.of("warmCoolantC", "70"),
                List.of("warmCoolantC", true),
                List.of("warmCoolantC", List.of(70)),
                List.of("needsLambda", 1),
                List.of("needsLambda", "true"),
                List.of("warmCoolant", 70),
                List.of("volumetricEfficiency", 0.9));
    }

    @ParameterizedTest
    @MethodSource("nonsense")
    void whatIsNoThresholdIsRefused(List<Object> entry) {
        String before = shop().policy().toString();
        String name = String.valueOf(entry.get(0));

        sets(Body.of(name, entry.get(1)).with("knockDegrees", 2)).isInvalid(THRESHOLDS + "." + name);
        shop().as(Role.MANAGER).put("/policy", Body.of(THRESHOLDS, 5)).isInvalid(THRESHOLDS);

        assertThat(shop().policy()).hasToString(before);
    }

    @Test
    void everyThresholdThatIsWrongIsNamed() {
        sets(Body.of("warmCoolantC", 30).with("dutyPercent", 101))
                .isInvalid(THRESHOLDS + ".warmCoolantC")
                .isInvalid(THRESHOLDS + ".dutyPercent");
    }

    @Test
    void onlyManagersSetThem() {
        for (Role role : List.of(Role.WRITER, Role.CALIBRATOR)) {
            shop().as(role)
                    .put("/policy", Body.of(THRESHOLDS, Body.of("dutyPercent", 80)))
                    .isProblem(403, "forbidden");
        }
    }

    @Test
    void aDriveLogMayBeAskedForAndHoldsACarWithoutOne() {
        Car finished = shop().finishesACar().car();
        Instant before = Instant.now().minusMillis(1);
        assertThat(finished.gate().outcome("DRIVE_LOG_PASSED")).isEqualTo("NOT_REQUIRED");

        shop().whilePolicySays("driveLogRequired", true, () -> {
            assertThat(finished.gate().outcome("DRIVE_LOG_PASSED")).isEqualTo("FAIL");
            // what was decided before it was asked for stays as it was
            assertThat(finished.gate(before, Instant.now()).outcome("DRIVE_LOG_PASSED"))
                    .isEqualTo("NOT_REQUIRED");
        });
        assertThat(finished.gate().outcome("DRIVE_LOG_PASSED")).isEqualTo("NOT_REQUIRED");
    }

    @Test
    void theJournalStatesThemWhole() {
        shop().whilePolicySays(THRESHOLDS, Body.of("pullSeconds", 1.7), () -> {
            List<String> versions = shop().as(Role.AUDITOR)
                    .get("/journal/export")
                    .is(200)
                    .text()
                    .lines()
                    .filter(line -> line.contains("POLICY_SET"))
                    .toList();
            assertThat(versions.get(versions.size() - 1)).contains("pullSeconds", "1.7", "warmCoolantC", "needsLambda");

            Answer verification =
                    shop().as(Role.AUDITOR).get("/journal/verification").is(200);
            assertThat(verification.json().path("intact").asBoolean())
                    .as(verification.text())
                    .isTrue();
        });
    }

    private Answer sets(Body thresholds) {
        return shop().as(Role.MANAGER).put("/policy", Body.of(THRESHOLDS, thresholds));
    }

    private static String message(Answer answer) {
        return Answer.textOf(answer.json().path("errors").path(0).path("message"));
    }
}
