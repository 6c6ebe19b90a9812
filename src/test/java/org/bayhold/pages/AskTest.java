package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.util.Map;
import java.util.UUID;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Look;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnH2;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A customer calls: may I run this part? In a real browser, with scripts and without. */
@ExtendWith(Browser.class)
class AskTest implements OnH2 {
    @Test
    void theAnswerChangesAsPartsAreAddedAndBecomesALetterAndWork(Windows windows) {
        Part fitted = shop().injectors(440);
        Part wanted = shop().injectors(650);
        Car car = shop().aCarCalibratedFor(fitted);
        try (Screen screen = windows.open(shop(), Role.WRITER)) {
            screen.to("/ask").typeWhereTheCaretIs("Which car?", car.vin());
            screen.page().keyboard().press("Enter");
            screen.page().waitForURL("**/cars/" + car.id() + "/ask");
            screen.shows("The answer stands here as soon as there is a part.");

            screen.typeWhereTheCaretIs("Add a part", fitted.partNumber());
            screen.page().keyboard().press("Tab");
            awaits(screen, "Yes. The calibration covers it.");
            screen.typeWhereTheCaretIs("Change", ""); // where Tab went, through the change of the page
            screen.field("Add a part").fill(wanted.partNumber());
            screen.page().keyboard().press("Tab");
            awaits(screen, "No. Retune first.");
            screen.shows("1.477").shows("do not start or load the engine");

            screen.type("What was asked", "May I run the 650s?").type("Who asked", "Ines Okoro");
            screen.press("Keep it, with its letter")
                    .shows("Kept. The letter is ready.")
                    .shows("May I run the 650s?");
            screen.press("Plan it on the car").shows("Planned on the car since");
            screen.to("/cars/" + car.id()).shows("Planned work").follow("Log the install");
            assertThat(screen.field("Part").inputValue()).contains(fitted.partNumber());
            screen.press("Record").isAt("/cars/" + car.id());
            assertThat(screen.page().locator("main").innerText()).doesNotContain("Planned work");
        }
        assertThat(car.stateOf("INJECTORS")).isEqualTo("PART");
    }

    @Test
    void itWorksWithoutScripts(Windows windows) {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        try (Screen screen = windows.open(shop(), Role.WRITER, Look.PHONE, false)) {
            screen.to("/cars/" + car.id() + "/ask")
                    .type("Add a part", shop().injectors(650).partNumber())
                    .press("Answer")
                    .shows("No. Retune first.")
                    .shows("EXTREME");
        }
    }

    @Test
    void wordsThatMeanSeveralPartsAreAskedAbout(Windows windows) {
        String series = "SER" + UUID.randomUUID().toString().substring(0, 8);
        Part small = shop().catalogues(aPart("INJECTORS").with("partNumber", series + "-1"));
        shop().catalogues(aPart("INJECTORS").with("partNumber", series + "-2"));
        Car car = shop().aCarCalibratedFor(small);
        try (Screen screen = windows.open(shop(), Role.WRITER, Look.TABLET, false)) {
            screen.to("/cars/" + car.id() + "/ask")
                    .type("Add a part", series)
                    .press("Answer")
                    .shows("Say which of these is meant.");
            screen.page().getByText(series + "-1").first().click();
            screen.press("Answer").shows("Yes. The calibration covers it.");
        }
    }

    @Test
    void whatTheCatalogueDoesNotKnowIsNoAnswer(Windows windows) {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        try (Screen screen = windows.open(shop(), Role.WRITER, Look.TABLET, false)) {
            screen.to("/cars/" + car.id() + "/ask")
                    .type("Add a part", "a brass thing " + UUID.randomUUID())
                    .press("Answer")
                    .shows("The catalogue does not know it. Say where it would sit.");
            screen.page().getByLabel("Place").first().selectOption("THROTTLE_BODY");
            screen.press("Answer").shows("No answer yet.");
        }
    }

    @Test
    void aCarThatIsNotInTheRegisterIsDescribed(Windows windows) {
        Car known = shop().registers(aCar());
        Part fitted = shop().injectors(440);
        Calibration calibration = shop().issues(RevisionDraft.forThe(known).covers(fitted));
        try (Screen screen = windows.open(shop(), Role.TECH, Look.TABLET, false)) {
            screen.to("/ask?car=nobody-has-this-plate").shows("Describe it instead.");
            screen.follow("A car that is not in the register").type("ECU hardware", known.ecuHardware());
            screen.page().locator("[id='fitted[0].part']").fill(fitted.partNumber());
            screen.page().locator("[id='lines[0].part']").fill(fitted.partNumber());
            screen.press("Answer").shows("No. Retune first.").unfold("With another calibration?");
            screen.page().locator("#calibrationId").selectOption(calibration.id());
            screen.press("Answer").shows("Yes. The calibration covers it.");
        }
    }

    @Test
    void whoMayNotAdviseSeesAnswersOnly() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        shop().visitor(Role.AUDITOR).opens("/answers").is(200);
        shop().visitor(Role.AUDITOR).opens("/cars/" + car.id() + "/ask").is(403);
        Visitor writer = shop().visitor(Role.WRITER);
        writer.opens("/cars/" + car.id() + "/ask").is(200);
        writer.sends("/cars/" + car.id() + "/ask", Map.of("lines[0].place", "NO_SUCH_PLACE", "lines[0].part", "x"))
                .is(200);
    }

    private static void awaits(Screen screen, String text) {
        screen.page()
                .locator(".verdict", new com.microsoft.playwright.Page.LocatorOptions().setHasText(text))
                .waitFor(new Locator.WaitForOptions().setState(WaitForSelectorState.VISIBLE));
    }
}
