package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.hoursAgo;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.Gate;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** {@code docs/rules.md}, rules 8 and 14: build sheet and gate as they were, and as they were known. */
public abstract class TwoTimes implements OnADatabase {

    @Test
    void theBuildSheetOfAnEarlierMoment() {
        Car car = shop().registers(aCar());
        car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(hoursAgo(4)));
        Instant now = Instant.now();

        assertThat(intakeOf(car, hoursAgo(5), now)).isEqualTo("FACTORY");
        assertThat(intakeOf(car, hoursAgo(3), now)).isEqualTo("PART");
    }

    @Test
    void aLateFactWasNotKnownBeforeItWasRecorded() {
        Car car = shop().registers(aCar());
        Instant before = Instant.now();
        Answer late = car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(hoursAgo(4)));
        Instant recorded = Instant.parse(late.field("recordedAt"));

        assertThat(intakeOf(car, hoursAgo(3), before)).isEqualTo("FACTORY");
        assertThat(intakeOf(car, hoursAgo(3), recorded)).isEqualTo("PART");
        car.gate(hoursAgo(3), before).isClear();
        car.gate(hoursAgo(3), recorded).holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
        car.gate(hoursAgo(5), recorded).isClear();
    }

    @Test
    void anAmendmentThatComesLateOverwritesOnlyWhatIsOlder() {
        Car car = shop().registers(aCar());
        amend(car, Body.of("customer", Body.of("name", "Maren Vogt")).at(hoursAgo(1)));

        amend(
                car,
                Body.of("customer", Body.of("name", "Piet Haan"))
                        .with("engine", "NW25T")
                        .at(hoursAgo(3)));
        amend(car, Body.of("engine", "NW20").at(hoursAgo(4)));

        JsonNode now = shop().as(Role.WRITER).get(car.path("")).is(200).json();
        assertThat(Answer.textOf(now.path("customer").path("name"))).isEqualTo("Maren Vogt");
        assertThat(Answer.textOf(now.path("engine"))).isEqualTo("NW25T");
        JsonNode verdict =
                shop().as(Role.AUDITOR).get("/journal/verification").is(200).json();
        assertThat(verdict.path("intact").asBoolean()).as(verdict.toString()).isTrue();
    }

    private void amend(Car car, Body patch) {
        shop().as(Role.WRITER).withIfMatch("*").patch(car.path(""), patch).is(200);
    }

    @Test
    void aStruckOutRecordCountsForWhatWasKnownThen() {
        Car car = shop().registers(aCar());
        Answer wrong = car.fits(shop().aPartFor("AIR_INTAKE"));
        Instant recorded = Instant.parse(wrong.field("recordedAt"));
        car.strikesOut(wrong);

        assertThat(intakeOf(car, recorded, recorded)).isEqualTo("PART");
        assertThat(intakeOf(car, recorded, Instant.now())).isEqualTo("FACTORY");
        car.gate(recorded, recorded).holdsFor("RETUNE_CLEARED");
        car.gate().isClear();
    }

    @Test
    void theFlashedRevisionOfAnEarlierMoment() {
        Car car = shop().registers(aCar());
        Calibration first = shop().issues(RevisionDraft.forThe(car));
        Calibration second = shop().issues(RevisionDraft.forThe(car));
        car.flashes(flash(first).at(hoursAgo(6)));
        car.flashes(flash(second).at(hoursAgo(2)));
        Instant now = Instant.now();

        assertThat(flashedAt(car, hoursAgo(7), now)).doesNotContain(first.id(), second.id());
        assertThat(flashedAt(car, hoursAgo(4), now)).contains(first.id()).doesNotContain(second.id());
        assertThat(flashedAt(car, hoursAgo(1), now)).contains(second.id()).doesNotContain(first.id());
    }

    @Test
    void theGateBeforeASignOffHeld() {
        FinishedCar finished = shop().finishesACar();
        Instant flashed = Instant.parse(finished.flash().field("recordedAt"));

        finished.car().gate(flashed, flashed).holdsFor("READ_BACK_MATCHES", "RETUNE_CLEARED");
        finished.car().gate(Instant.now(), Instant.now()).isClear();
    }

    @Test
    void aRevisionIsWithdrawnFromTheMomentOfItsWithdrawal() {
        FinishedCar finished = shop().finishesACar();
        Instant inForce = Instant.now();
        shop().withdraws(finished.calibration());

        finished.car().gate(inForce, inForce).isClear();
        finished.car().gate().holdsFor("CALIBRATION_IN_FORCE");
    }

    @Test
    void theHistoryAsItWasKnown() {
        Car car = shop().registers(aCar());
        Answer first = car.fits(shop().aPartFor("AIR_INTAKE"));
        Answer second = car.fits(shop().aPartFor("DOWNPIPE"));

        String known = shop().as(Role.AUDITOR)
                .get(car.path("history") + "?knownAt=" + first.field("recordedAt"))
                .is(200)
                .text();

        assertThat(known).contains(first.id()).doesNotContain(second.id());
    }

    @Test
    void whatAHandoverDecidedIsWhatTheRecordSaidThen() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        Instant then = Instant.parse(handoff.field("recordedAt")).minusNanos(1_000);

        Part later = shop().aPartFor("DOWNPIPE");
        finished.car().changes(fit(later).at(hoursAgo(3)));

        assertThat(finished.car().gate(then, then).outcomes())
                .isEqualTo(new Gate(handoff.json().path("gate")).outcomes());
        finished.car().gate(then, Instant.now()).holdsFor("PARTS_COVERED");
    }

    @Test
    void whatWillBeKnownIsNotForAsking() {
        Car car = shop().registers(aCar());
        Instant tomorrow = Instant.now().plusSeconds(86_400);

        shop().as(Role.WRITER).get(car.path("gate") + "?knownAt=" + tomorrow).isInvalid("knownAt");
        shop().as(Role.WRITER)
                .get(car.path("build-sheet") + "?knownAt=" + tomorrow)
                .isInvalid("knownAt");
        shop().as(Role.WRITER).get(car.path("history") + "?knownAt=" + tomorrow).isInvalid("knownAt");
    }

    @Test
    void aTimeThatIsNoneIsRefused() {
        Car car = shop().registers(aCar());

        shop().as(Role.WRITER).get(car.path("gate") + "?effectiveAt=yesterday").isInvalid("effectiveAt");
        shop().as(Role.WRITER)
                .get(car.path("build-sheet") + "?effectiveAt=2026-13-01T00:00:00Z")
                .isInvalid("effectiveAt");
    }

    private static String intakeOf(Car car, Instant effectiveAt, Instant knownAt) {
        return Car.stateOf(car.buildSheet(effectiveAt, knownAt), "AIR_INTAKE");
    }

    private String flashedAt(Car car, Instant effectiveAt, Instant knownAt) {
        String query = "?effectiveAt=" + effectiveAt + "&knownAt=" + knownAt;
        return shop().as(Role.TECH)
                .get(car.path("build-sheet") + query)
                .is(200)
                .json()
                .path("flashed")
                .toString();
    }
}
