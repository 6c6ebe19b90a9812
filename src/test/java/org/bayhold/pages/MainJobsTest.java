package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Look;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnH2;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Each role's main job, in a real browser; what is logged is in {@link LogAnInstallTest}. */
@ExtendWith(Browser.class)
class MainJobsTest implements OnH2 {

    @Test
    void aTechnicianFlashesAndReadsBack(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        try (Screen screen = windows.open(shop(), Role.TECH)) {
            screen.to("/cars/" + car.id() + "/flash").shows("written for this build sheet");
            screen.press("Record the flash").isAt("/cars/" + car.id()).shows("The flash is recorded.");
            screen.to("/cars/" + car.id() + "/ecu-check")
                    .type("CALID", calibration.calid())
                    .type("CVN", calibration.cvn())
                    .press("Record the ECU check")
                    .isAt("/cars/" + car.id())
                    .shows("The ECU reports the calibration on record.");
        }
        car.gate().holdsFor("RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED");
    }

    @Test
    void aCalibratorSignsOffWithThePassword(Windows windows) {
        Car car = readBackCar();
        String item = car.openItem().id();
        try (Screen screen = windows.open(shop(), Role.CALIBRATOR)) {
            screen.to("/retunes/" + item).shows("The evidence is complete");
            screen.type("Password of calibrator", "not the password").press("Sign off");
            screen.shows("This is not the password.");
            screen.type("Password of calibrator", shop().password())
                    .press("Sign off")
                    .isAt("/cars/" + car.id())
                    .shows("The retune is signed off.");
        }
        car.gate().holdsFor("CUSTOMER_ACKNOWLEDGED");
    }

    @Test
    void aWriterAcknowledgesAndHandsOver(Windows windows) {
        Car car = readBackCar();
        car.clears("FLASHED");
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/hand-over")
                    .shows("The customer has not yet acknowledged the risk and the use of the car.");
            screen.follow("Customer acknowledges")
                    .press("Record the acknowledgement")
                    .isAt("/cars/" + car.id());
            assertThat(screen.gate()).isEqualTo("CLEAR");
            screen.follow("Hand over").type("Odometer", "48 300").press("Hand over");
            screen.shows("Handed over, CLEAR.").follow("Show the certificate to print");
            assertThat(screen.page().locator("h1").innerText()).isEqualTo("Release certificate");
            assertThat(screen.page().locator("body").innerText()).contains(car.vin(), "48300");
        }
        assertThat(car.handoffs()).hasSize(1);
    }

    @Test
    void aManagerReleasesByException(Windows windows) {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("TURBOCHARGER"));
        try (Screen screen = windows.open(shop(), Role.MANAGER)) {
            screen.to("/cars/" + car.id() + "/hand-over").unfold("Release by exception");
            screen.type("Reason", "to the paint shop next door")
                    .choose("on a trailer")
                    .type("Limitations", "not to be started")
                    .type("Password of manager", shop().password())
                    .press("Release by exception");
            screen.shows("Released by exception.").follow("Show the certificate to print");
            assertThat(screen.page().locator("body").innerText())
                    .contains("to the paint shop next door", "not to be started", "WARNING");
        }
        assertThat(car.handoffs()).hasSize(1);
        assertThat(car.findOpenItem()).isPresent();
    }

    @Test
    void aStalePageSaysWhoChangedWhatAndKeepsWhatWasTyped(Windows windows) {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));
        String item = car.openItem().id();
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/retunes/" + item);
            shop().as(Role.MANAGER)
                    .withIfMatch(
                            shop().as(Role.MANAGER).get("/retune-items/" + item).etag())
                    .patch("/retune-items/" + item, Body.of("assignee", "Tariq Boone"))
                    .is(200);
            screen.type("Done by", "Mira Lindqvist").press("Save the plan");

            screen.shows("manager changed this").shows("Done by: Tariq Boone.");
            assertThat(screen.field("Done by").inputValue()).isEqualTo("Mira Lindqvist");
            screen.press("Save the plan").shows("The plan is saved.");
            assertThat(screen.field("Done by").inputValue()).isEqualTo("Mira Lindqvist");
        }
    }

    @Test
    void theMainJobNeedsNoScripts(Windows windows) {
        FinishedCar finished = shop().finishesACar();
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        try (Screen screen = windows.open(shop(), Role.WRITER, Look.TABLET, false)) {
            screen.to("/cars/" + car.id() + "/install").type("Part", intake.partNumber());
            screen.press("Record").isAt("/cars/" + car.id());
            assertThat(screen.gate()).isEqualTo("HOLD");
            String path = "/cars/" + finished.car().id() + "/hand-over";
            screen.to(path).press("Hand over").isAt(path).shows("Handed over, CLEAR.");
        }
        assertThat(finished.car().handoffs()).hasSize(1);
    }

    @Test
    void aPageThatIsLookedAtAgainShowsWhatOthersDid(Windows windows) {
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/");
            Car car = shop().registers(aCar().with("plate", "LATE 1"));
            assertThat(screen.page().locator("main").innerText()).doesNotContain("LATE 1");
            screen.page().evaluate("window.dispatchEvent(new Event('focus'))");
            screen.page().getByText("LATE 1").waitFor();
            screen.page().locator("a[href='/cars/" + car.id() + "']").click();
            screen.isAt("/cars/" + car.id());
        }
    }

    @Test
    void aManagerPutsAWrongRecordRight(Windows windows) {
        Car car = shop().registers(aCar());
        Part wrong = shop().aPartFor("AIR_INTAKE");
        Part right = shop().aPartFor("AIR_FILTER");
        String record = car.fits(wrong).id();
        try (Screen screen = windows.open(shop(), Role.MANAGER)) {
            screen.to("/records/" + record + "/strike-out")
                    .type("Why it is wrong", "it was the filter")
                    .unfold("The right record in its place");
            screen.choose("Record this in the place of what is struck out");
            screen.page().locator("[id='replacement.category']").selectOption("AIR_FILTER");
            screen.type("Part", right.partNumber()).type("Password of manager", "not the password");
            screen.press("Strike it out").shows("This is not the password.");
            assertThat(screen.field("Part").inputValue()).isEqualTo(right.partNumber());
            screen.type("Password of manager", shop().password()).press("Strike it out");
            screen.isAt("/cars/" + car.id()).shows("The right record stands in its place.");
        }
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
        assertThat(car.stateOf("AIR_FILTER")).isEqualTo("PART");
    }

    @Test
    void aManagerSeesWhichCarsLeftUnmatchedAndWhatWasKnownWhen(Windows windows) {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("TURBOCHARGER"));
        try (Screen screen = windows.open(shop(), Role.MANAGER)) {
            screen.to("/cars/" + car.id() + "/hand-over").unfold("Release by exception");
            screen.type("Reason", "the bay is needed")
                    .choose("on a trailer")
                    .type("Password of manager", shop().password())
                    .press("Release by exception");
            screen.follow("Audit").shows("Still on the road without a match").shows("Released by exception");
            screen.page()
                    .locator(".audited a[href='/cars/" + car.id() + "/history']")
                    .click();
            screen.isAt("/cars/" + car.id() + "/history").shows("Its time in one picture");
            assertThat(screen.page().locator(".time-line .band.UNMATCHED").count())
                    .isPositive();
            screen.unfold("The same as a table").shows("DO NOT MATCH");
            screen.type("As known on", "2020-01-01T00:00").press("Show").shows("as known on 1 Jan 2020");
            assertThat(screen.gate()).isEqualTo("CLEAR");
            assertThat(screen.page().locator(".records li").count()).isZero();
            screen.to("/audit/on-the-road").shows("Call the owner");
            screen.to("/audit?from=2026-02-01&to=2026-01-01");
            screen.shows("The period ends before it begins");
        }
    }

    @Test
    void aWriterRecordsANewOwnerAndAStalePageIsTold(Windows windows) {
        Car car = shop().registers(aCar());
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id()).follow("Particulars").press("Save").shows("Nothing was changed.");
            Answer read = shop().as(Role.MANAGER).get("/vehicles/" + car.id());
            screen.to("/cars/" + car.id() + "/particulars");
            shop().as(Role.MANAGER)
                    .withIfMatch(read.etag())
                    .patch("/vehicles/" + car.id(), Body.of("plate", "NEW 77"))
                    .is(200);
            screen.type("Name", "Oda Brekke").press("Save");
            screen.shows("manager changed this").shows("plate NEW 77");
            assertThat(screen.field("Name").inputValue()).isEqualTo("Oda Brekke");
            screen.type("Plate", "NEW 77").press("Save").isAt("/cars/" + car.id());
            screen.shows("The particulars are changed.").shows("Oda Brekke").shows("NEW 77");
        }
        Answer now = shop().as(Role.MANAGER).get("/vehicles/" + car.id());
        assertThat(now.json().path("customer").path("name").asString()).isEqualTo("Oda Brekke");
        assertThat(now.json().path("customer").path("phone").asString()).isEqualTo("+1 555 0142");
        assertThat(now.json().path("engine").asString()).isEqualTo("NW20T");
    }

    /** Flashed for what is on it and read back; nobody signed yet. */
    private Car readBackCar() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        car.flashes(calibration);
        car.readsBack(calibration);
        return car;
    }
}
