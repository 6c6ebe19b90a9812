package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;

import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Audit;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Trouble codes and monitors with an ECU check, and {@code NO_RELATED_TROUBLE_CODES}: docs/rules.md, "Gate checks". */
public abstract class TroubleCodes implements OnADatabase {
    private static final String CHECK = "NO_RELATED_TROUBLE_CODES";
    /** CALA and 2D99C26C. */
    private static final String IDENTITY =
            "7E8 49 04 01 43 41 4C 41 00 00 00 00 00 00 00 00 00 00 00 00\n7E8 49 06 01 2D 99 C2 6C\n";

    private FinishedCar finished;
    private Car car;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
    }

    private Body reading() {
        return finished.calibration().reading();
    }

    private Answer sends(Body check) {
        return shop().as(Role.TECH).post(car.path("read-backs"), check);
    }

    private static List<String> codes(JsonNode told) {
        return elements(told.path("troubleCodes")).stream()
                .map(code -> textOf(code.path("code")) + " " + textOf(code.path("kind")) + " "
                        + code.path("related").asBoolean())
                .toList();
    }

    @Test
    void aCheckWithoutCodesTellsOfNone() {
        Answer answer = car.readsBack(reading());

        assertThat(answer.json().path("troubleCodes").isNull()).isTrue();
        assertThat(answer.json().path("readiness").isNull()).isTrue();
        assertThat(car.record(answer.id()).orElseThrow().path("record").has("troubleCodes"))
                .isFalse();
        assertThat(car.gate().isWhole().outcome(CHECK)).isEqualTo("NOT_REQUIRED");
        car.gate().isClear();
    }

    @Test
    void typedCodesAreStoredOnes() {
        Answer answer = car.readsBack(reading().with("troubleCodes", List.of("p0171", "P0420", "P1171", "P0171")));

        assertThat(codes(answer.json()))
                .containsExactly("P0171 STORED true", "P0420 STORED false", "P1171 STORED false");
        assertThat(codes(car.record(answer.id()).orElseThrow().path("record"))).isEqualTo(codes(answer.json()));
        car.gate().isWhole().holdsFor(CHECK);
        assertThat(car.gate().risk()).isEqualTo("HIGH");
        JsonNode failed = car.gate().checks().stream()
                .filter(check -> textOf(check.path("code")).equals(CHECK))
                .findFirst()
                .orElseThrow();
        assertThat(elements(failed.path("records"))).extracting(Answer::textOf).containsExactly(answer.id());
    }

    @Test
    void aCleanCheckLetsTheCarGo() {
        car.readsBack(reading().with("troubleCodes", List.of("P0299")));
        car.asksToLeave().isHeld();

        car.readsBack(reading().with("troubleCodes", List.of()));

        assertThat(car.gate().outcome(CHECK)).isEqualTo("PASS");
        car.handsOver();
    }

    /** The calibration may match and be signed off all the same; only a manager lets the car go. */
    @Test
    void aRelatedCodeOpensNoRetune() {
        Answer answer = car.readsBack(reading().with("troubleCodes", List.of("P0171")));

        assertThat(textOf(answer.json().path("retuneItemId"))).isEmpty();
        assertThat(car.findOpenItem()).isEmpty();
        car.asksToLeave().isHeld();
        car.asksToLeaveByException(exception()).is(201);
        Audit.Row row =
                new Audit(shop()).of(car).get(0).says("HOLD", "HOLD", "HOLD").isNeverUnmatched();
        assertThat(row.list("failedThen")).containsExactly(CHECK);
        assertThat(row.list("failedKnownThen")).containsExactly(CHECK);
    }

    @Test
    void aSignOffDoesNotWaitForIt() {
        car.fits(finished.intake());
        car.readsBack(reading().with("troubleCodes", List.of("P0171")));

        car.clears("STILL_COVERED");

        car.gate().holdsFor(CHECK);
    }

    @Test
    void policyMayLeaveItOut() {
        car.readsBack(reading().with("troubleCodes", List.of("P0171")));

        assertThat(shop().policy().path("troubleCodesChecked").asBoolean()).isTrue();
        shop().whilePolicySays(
                        "troubleCodesChecked",
                        false,
                        () -> assertThat(car.gate().outcome(CHECK)).isEqualTo("NOT_REQUIRED"));
        assertThat(car.gate().outcome(CHECK)).isEqualTo("FAIL");
    }

    @Test
    void aFactoryCarIsHeldOnlyByACodeThatWasRead() {
        Car factory = shop().registers(aCar());
        assertThat(factory.gate().outcome(CHECK)).isEqualTo("NOT_REQUIRED");

        factory.readsBack(factory.factoryReading().with("troubleCodes", List.of("P0420")));
        assertThat(factory.gate().outcome(CHECK)).isEqualTo("PASS");
        factory.readsBack(factory.factoryReading().with("troubleCodes", List.of("P0304")));
        factory.gate().holdsFor(CHECK);
    }

    @Test
    void onePasteTellsOfSoftwareCodesAndMonitors() {
        Answer answer = sends(Body.of(
                        "response",
                        IDENTITY + "7E8 04 43 01 01 71\n7E9 02 43 00\n7E8 04 47 01 04 20\n7E8 03 7F 0A 11\n"
                                + "7E8 06 41 01 81 27 61 20"))
                .is(201);

        assertThat(answer.field("calid")).isEqualTo("CALA");
        assertThat(codes(answer.json())).containsExactly("P0171 STORED true", "P0420 PENDING false");
        JsonNode readiness = answer.json().path("readiness");
        assertThat(readiness.path("milOn").asBoolean()).isTrue();
        assertThat(elements(readiness.path("monitors")).stream()
                        .filter(monitor -> monitor.path("supported").asBoolean()
                                && !monitor.path("complete").asBoolean())
                        .map(monitor -> textOf(monitor.path("monitor"))))
                .containsExactly("FUEL_SYSTEM", "OXYGEN_SENSOR");
        assertThat(elements(answer.json().path("warnings")))
                .extracting(Answer::textOf)
                .contains("MONITORS_NOT_COMPLETE");
    }

    @Test
    void codesAloneStandBesideWhatIsTyped() {
        Answer answer = sends(reading().with("response", "43 00\n4A 01 01 71\n41 01 00 07 00 00"))
                .is(201);

        assertThat(codes(answer.json())).containsExactly("P0171 PERMANENT true");
        assertThat(answer.json().path("matches").asBoolean()).isTrue();
        assertThat(elements(answer.json().path("warnings"))).isEmpty();
        sends(reading().with("response", "47 00").with("troubleCodes", List.of("P0420")))
                .is(201);
        sends(Body.of("response", IDENTITY).with("troubleCodes", List.of())).is(201);
    }

    @Test
    void whatSaysNothingOfTheSoftwareIsNoEcuCheck() {
        sends(Body.of("response", "43 01 01 71")).isInvalid("response");
        sends(Body.of("response", "41 01 00 07 00 00")).isInvalid("response");
        sends(Body.of("troubleCodes", List.of("P0171"))).isInvalid("calid");
    }

    @Test
    void nothingIsToldInTwoWays() {
        sends(reading().with("response", IDENTITY)).isInvalid("response");
        sends(Body.of("response", IDENTITY + "43 00").with("troubleCodes", List.of()))
                .isInvalid("troubleCodes");
    }

    /** Pending ones alone would pass for a clean record. */
    @Test
    void theStoredCodesAreNotLeftOut() {
        sends(reading().with("response", "47 00")).isInvalid("response");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "43 02 01 71",
                "7E8 10 08 43 03 13 01 45 10",
                "43 00\n43 01 01 71",
                "48 6B 10 43 01 71 00 00 00 00 00"
            })
    void aListThatIsNotWholeIsRefused(String lost) {
        int before = car.history().size();

        sends(reading().with("response", lost)).isInvalid("response");

        assertThat(car.history()).hasSize(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"P171", "P0000", "X0171", "P01711", "", "P0171 P0172"})
    void whatIsNoCodeIsRefused(String code) {
        int before = car.history().size();

        sends(reading().with("troubleCodes", List.of(code))).isProblem(400, "invalid");

        assertThat(car.history()).hasSize(before);
    }

    @Test
    void theCertificateTellsOfThem() {
        sends(reading().with("response", "43 01 04 20\n41 01 00 07 07 02")).is(201);
        Answer handoff = car.handsOver();

        String page =
                shop().as(Role.MANAGER).get(handoff.field("certificateUrl")).text();

        assertThat(page)
                .contains("P0420, stored: not of mixture, airflow, boost or misfire")
                .contains("Monitors: 5 of 6 complete, not yet: heated catalyst")
                .contains("No trouble code of mixture, airflow, boost or misfire");
    }
}
