package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import com.microsoft.playwright.options.AriaRole;
import org.bayhold.support.Answer;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnH2;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Logging what was fitted, removed or adjusted, in a real browser. */
@ExtendWith(Browser.class)
class LogAnInstallTest implements OnH2 {

    @Test
    void aWriterLogsSeveralPartsAndSeesTheCarOnHold(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        Part filter = shop().aPartFor("AIR_FILTER");
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/install").type("Which car?", car.vin());
            screen.page().keyboard().press("Enter"); // as a bar-code scanner does
            screen.page().waitForURL("**/cars/" + car.id() + "/install");
            screen.type("Part", intake.partNumber());
            screen.press("Add another part");
            screen.page().locator("[id='lines[1].part']").fill(filter.partNumber());
            screen.press("Record");

            screen.isAt("/cars/" + car.id()).shows("Recorded. Part changes: 2.");
            assertThat(screen.gate()).isEqualTo("HOLD");
        }
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("PART");
        assertThat(car.stateOf("AIR_FILTER")).isEqualTo("PART");
        assertThat(car.openItem().causes()).containsExactly("PART_CHANGED", "PART_CHANGED");
    }

    @Test
    void whereOnePartOfSeveralIsRefusedNoneIsRecorded(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        int before = car.history().size();
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/install").type("Part", intake.partNumber());
            screen.press("Add another part");
            screen.page().locator("[id='lines[1].part']").fill(intake.partNumber());
            screen.page().locator("[id='lines[1].place']").selectOption("AIR_INTAKE");
            screen.page().locator("fieldset.line").nth(1).locator("summary").click();
            screen.page().locator("[id='lines[1].ecuHardware']").fill("HW-9");
            screen.press("Record");

            screen.shows("ecuHardware goes with a change of the ECU only.");
            assertThat(screen.page().locator("[id='lines[0].part']").inputValue())
                    .isEqualTo(intake.partNumber());
            assertThat(screen.page().locator("[id='lines[1].ecuHardware']").inputValue())
                    .isEqualTo("HW-9");
        }
        assertThat(car.history()).hasSize(before);
    }

    @Test
    void aPartThatTheCatalogueDoesNotHaveStopsNobody(Windows windows) {
        Car car = shop().registers(aCar());
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/install").type("Part", "handmade throttle, brass");
            screen.page().getByLabel("Place").selectOption("THROTTLE_BODY");
            screen.page().keyboard().press("Tab");
            screen.press("Record").shows("The catalogue has no such part.");
            screen.press("Record").isAt("/cars/" + car.id());
        }
        assertThat(car.stateOf("THROTTLE_BODY")).isEqualTo("UNKNOWN");
    }

    @Test
    void aWriterLogsAnInstallWithTheKeyboardAlone(Windows windows) {
        Car car = shop().registers(aCar());
        Part injectors = shop().aPartFor("INJECTORS");
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/install").typeWhereTheCaretIs("Which car?", car.vin());
            screen.page().keyboard().press("Enter");
            screen.page().waitForURL("**/cars/" + car.id() + "/install");
            screen.typeWhereTheCaretIs("Part", injectors.partNumber());
            screen.page().keyboard().press("Escape"); // the list of suggestions
            screen.page().keyboard().press("Enter");
            screen.page().waitForURL("**/cars/" + car.id());
            assertThat(screen.gate()).isEqualTo("HOLD");
        }
        assertThat(car.stateOf("INJECTORS")).isEqualTo("PART");
    }

    @Test
    void aDoubleClickMakesOneRecord(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/install").type("Part", intake.partNumber());
            screen.page()
                    .getByRole(
                            AriaRole.BUTTON,
                            new com.microsoft.playwright.Page.GetByRoleOptions()
                                    .setName("Record")
                                    .setExact(true))
                    .dblclick();
            screen.page().waitForURL("**/cars/" + car.id());
        }
        assertThat(car.history().stream()
                        .filter(record -> Answer.textOf(record.path("kind")).equals("PART_CHANGED")))
                .hasSize(1);
    }

    @Test
    void whichCameFirstIsAskedWhereAMinuteHasMore(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        java.time.Instant minute = java.time.Instant.now()
                .minus(java.time.Duration.ofHours(2))
                .truncatedTo(java.time.temporal.ChronoUnit.MINUTES);
        car.flashes(org.bayhold.support.Facts.flash(calibration).with("effectiveAt", minute.plusSeconds(20)));
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/install")
                    .type("Part", intake.partNumber())
                    .unfold("When, who, odometer")
                    .type("When", minute.toString().substring(0, 16))
                    .press("Record")
                    .shows("Say which came first.");
            screen.page().getByText("This came after: Flash").click();
            screen.press("Record").isAt("/cars/" + car.id());
        }
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "READ_BACK_MATCHES", "RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED");
    }

    @Test
    void theCatalogueIsOfferedWhileSomebodyTypes(Windows windows) {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/cars/" + car.id() + "/install");
            screen.page()
                    .waitForResponse(
                            response -> response.url().contains("/parts/suggestions"),
                            () -> screen.field("Part").pressSequentially(allButTheEnd(intake.partNumber())));
            screen.page()
                    .locator("#parts option[value*='" + intake.partNumber() + "']")
                    .waitFor(new com.microsoft.playwright.Locator.WaitForOptions()
                            .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED));
        }
    }

    /** So much that few parts are meant, however many other tests have made. */
    private static String allButTheEnd(String number) {
        return number.substring(0, number.length() - 1);
    }
}
