package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;

import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.Gate;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import org.springframework.web.util.HtmlUtils;

/** From the part change to the handover. */
public abstract class MainJob implements OnADatabase {

    @Test
    void aPartChangeHoldsTheCarUntilItsRetuneIsCleared() {
        Car car = shop().registers(aCar());
        car.gate().isClear();
        Part intake = shop().aPartFor("AIR_INTAKE");

        Answer install = car.changes(fit(intake).with("odometerKm", 48_210).with("performedBy", "Tariq Boone"));

        RetuneItem item = car.openItem();
        assertThat(install.field("retuneItemId")).isEqualTo(item.id());
        assertThat(item.causes()).containsExactly("PART_CHANGED");
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "PARTS_COVERED", "RETUNE_CLEARED");
        car.asksToLeave().isHeld().holdsFor("FLASH_AFTER_LAST_CHANGE", "PARTS_COVERED", "RETUNE_CLEARED");

        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        car.flashes(calibration);
        Answer readBack = car.readsBack(calibration);
        assertThat(readBack.json().path("matches").asBoolean()).isTrue();
        assertThat(readBack.field("calid")).isEqualTo(calibration.calid());
        assertThat(readBack.field("cvn")).isEqualTo(calibration.cvn());
        car.gate().holdsFor("RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED");
        car.clears("FLASHED");
        car.acknowledges();

        car.gate().isClear();
        Answer handoff = car.handsOver();
        assertThat(handoff.field("basis")).isEqualTo("CLEAR");
        assertThat(handoff.field("recordedAt")).isNotEmpty();
        assertThat(handoff.header("Location")).isNotEmpty();
        new Gate(handoff.json().path("gate")).isClear();
        assertThat(car.handoffs()).hasSize(1);
    }

    @Test
    void theItemStandsInTheShopsList() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("TURBOCHARGER"));

        RetuneItem item = car.openItem();

        assertThat(shop().as(Role.TECH).list("/retune-items?status=OPEN"))
                .extracting(open -> Answer.textOf(open.path("id")))
                .contains(item.id());
        Answer alone = shop().as(Role.TECH).get("/retune-items/" + item.id()).is(200);
        assertThat(alone.field("status")).isEqualTo("OPEN");
        assertThat(alone.field("openedAt")).isNotEmpty();
        assertThat(alone.field("risk")).isIn("EXTREME", "HIGH", "MODERATE", "LOW");
        assertThat(alone.etag()).isNotEmpty();
    }

    @Test
    void aRefusedHandoverIsRecordedAndHandsNothingOver() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));
        int before = car.history().size();

        Answer refused = car.asksToLeave();

        refused.isHeld();
        assertThat(car.history()).hasSize(before + 1);
        assertThat(car.handoffs()).isEmpty();
    }

    @Test
    void theDecisionNamesWhatIsFittedAndWhatWasCalibratedFor() {
        FinishedCar finished = shop().finishesACar();
        Part other = shop().aPartFor("AIR_INTAKE");
        finished.car().fits(other);

        Gate gate = finished.car().gate();

        assertThat(gate.mismatchedPlaces()).containsExactly("AIR_INTAKE");
        var mismatch = gate.mismatches().get(0);
        assertThat(Answer.textOf(mismatch.path("fitted").path("state"))).isEqualTo("PART");
        assertThat(Answer.textOf(mismatch.path("fitted").path("partSpecId"))).isEqualTo(other.id());
        assertThat(Answer.textOf(mismatch.path("fitted").path("partNumber"))).isEqualTo(other.partNumber());
        assertThat(mismatch.path("calibratedFor").toString())
                .contains(finished.intake().id());
        assertThat(Answer.textOf(mismatch.path("why"))).isNotBlank();
        assertThat(gate.risk()).isIn("EXTREME", "HIGH", "MODERATE", "LOW");
    }

    @Test
    void theCertificateSaysWhatWasReleased() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();

        Answer certificate = shop().as(Role.WRITER)
                .withHeader("Accept", "text/html")
                .get(handoff.field("certificateUrl"))
                .is(200);

        assertThat(certificate.header("Content-Type")).startsWith("text/html");
        String text = textOf(certificate);
        assertThat(text)
                .contains(finished.car().vin())
                .contains(finished.car().ecuHardware())
                .contains(finished.calibration().calid())
                .contains(finished.calibration().cvn())
                .contains(finished.calibration().fileSha256())
                .contains(finished.intake().partNumber())
                .containsIgnoringCase("any change to these parts: call us before you drive");
        for (var check : new Gate(handoff.json().path("gate")).checks()) {
            assertThat(text).contains(oneLine(Answer.textOf(check.path("reason"))));
        }
    }

    @Test
    void aHandedOverCarIsAcknowledgedAnewBeforeItLeavesAgain() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();
        shop().as(Role.WRITER)
                .post(finished.car().path("arrivals"), Body.empty())
                .is(201);

        finished.car().asksToLeave().isHeld().holdsFor("CUSTOMER_ACKNOWLEDGED");

        finished.car().acknowledges();
        finished.car().handsOver();
    }

    private static String textOf(Answer html) {
        return oneLine(HtmlUtils.htmlUnescape(html.text().replaceAll("<[^>]*>", " ")));
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
