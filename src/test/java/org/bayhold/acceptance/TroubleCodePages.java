package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bayhold.support.Answer;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** <i>ECU check</i> with trouble codes, the car's page after it, and a correction that keeps them. */
public abstract class TroubleCodePages implements OnADatabase {
    private FinishedCar finished;
    private Car car;
    private Visitor technician;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
        technician = shop().visitor(Role.TECH);
    }

    private Visitor.Shown sends(Map<String, String> more) {
        String path = "/cars/" + car.id() + "/ecu-check";
        technician.opens(path).is(200);
        Map<String, String> typed = new HashMap<>(more);
        typed.put("calid", finished.calibration().reading().text("calid"));
        typed.put("cvn", finished.calibration().reading().text("cvn"));
        return technician.sends(path, typed);
    }

    @Test
    void whatWasReadIsSaidInWords() {
        Visitor.Shown page = sends(
                        Map.of("troubleCodes", "p0171, P0420; P1171", "response", "41 01 80 07 03 02\n47 01 02 99"))
                .is(200);

        assertThat(page.path()).isEqualTo("/cars/" + car.id());
        assertThat(page.text())
                .contains(
                        "The ECU reports the calibration on record.",
                        "P0171, stored: mixture too lean",
                        "P0420, stored: not of mixture, airflow, boost or misfire",
                        "P1171, stored: the maker's own, not judged",
                        "P0299, pending: too little boost",
                        "Warning lamp on",
                        "Monitors: 4 of 5 complete, not yet: heated catalyst",
                        "Not every monitor has run",
                        "Find what causes the trouble code, mend it, and check the ECU again.");
    }

    @Test
    void thatThereAreNoneIsTicked() {
        sends(Map.of()).is(200);
        assertThat(car.gate().outcome("NO_RELATED_TROUBLE_CODES")).isEqualTo("NOT_REQUIRED");

        assertThat(sends(Map.of("noTroubleCodes", "true")).is(200).text()).contains("No trouble codes");
        assertThat(car.gate().outcome("NO_RELATED_TROUBLE_CODES")).isEqualTo("PASS");
    }

    @Test
    void whatIsWrongIsSaidAtItsField() {
        int before = car.history().size();

        Visitor.Shown wrong = sends(Map.of("troubleCodes", "P0171 and more")).is(400);
        assertThat(wrong.html()).contains("value=\"P0171 and more\"");
        assertThat(wrong.text()).contains("Write trouble codes like P0171");
        assertThat(sends(Map.of("troubleCodes", "P0171", "noTroubleCodes", "true"))
                        .is(400)
                        .text())
                .contains("Either there are trouble codes, or there are none.");
        assertThat(sends(Map.of("response", "43 02 01 71")).is(400).text())
                .contains("Line 1: The answer ends before the items it announces.");
        assertThat(car.history()).hasSize(before);
    }

    /** Put right on a page, a check must not lose the code that holds the car. */
    @Test
    void aCorrectedCheckKeepsItsCodes() {
        Answer check = car.readsBack(finished.calibration().reading().with("troubleCodes", List.of("P0171")));
        Visitor manager = shop().visitor(Role.MANAGER);
        String path = "/records/" + check.id() + "/strike-out";
        manager.opens(path).is(200);

        manager.sends(
                        path,
                        Map.of(
                                "reason",
                                "read by somebody else",
                                "password",
                                shop().password(),
                                "replace",
                                "true",
                                "replacement.calid",
                                finished.calibration().reading().text("calid"),
                                "replacement.cvn",
                                finished.calibration().reading().text("cvn"),
                                "replacement.performedBy",
                                "Odd Fenwick"))
                .is(200);

        assertThat(car.record(check.id()).orElseThrow().path("voided").asBoolean())
                .isTrue();
        JsonNode last = car.history().get(car.history().size() - 1).path("record");
        assertThat(elements(last.path("troubleCodes")))
                .extracting(code -> textOf(code.path("code")))
                .containsExactly("P0171");
        car.gate().holdsFor("NO_RELATED_TROUBLE_CODES");
    }
}
