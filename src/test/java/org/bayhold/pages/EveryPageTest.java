package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;
import static org.bayhold.support.Facts.about;
import static org.bayhold.support.Facts.proposes;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.bayhold.drivelog.SentLog;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Look;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.extension.ExtendWith;

/** Every page, light and dark and in three widths: nothing that axe-core finds, nothing sideways, nothing in the console. */
@ExtendWith(Browser.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class EveryPageTest {
    /** Other widths bring no other colours or names; what they could bring is a page wider than the window. */
    private static final List<Look> WIDTHS = List.of(Look.PHONE, Look.DESK);

    /** A shop of its own: what other tests have made would only make the pages long. */
    private final FreshBayhold bayhold = FreshBayhold.withoutCars(FreshBayhold.Store.h2());

    @AfterAll
    void close() {
        bayhold.close();
    }

    private Shop shop() {
        return bayhold.shop();
    }

    @Test
    void everyPageIsAccessibleInEveryLook(Windows windows) {
        List<String> pages = pages();
        try (Screen screen = windows.open(shop(), Role.MANAGER)) {
            pages.forEach(page -> inEveryLook(screen.to(page)));
        }
    }

    /** Every rule in one look, the width in all of them, and in the dark what the dark changes: the colours. */
    private static void inEveryLook(Screen screen) {
        screen.isAccessible();
        WIDTHS.forEach(width -> screen.in(width).fits());
        screen.in(Look.TABLET.dark()).isLegible();
        screen.in(Look.TABLET);
    }

    /** The checks of every page see what they are there to see. */
    @Test
    void whatIsWrongIsFound(Windows windows) {
        try (Screen screen = windows.open(shop(), Look.TABLET, true)) {
            screen.to("/sign-in").isAccessible().isLegible();
            put(screen, "input", Map.of(), "");
            assertThatThrownBy(screen::isAccessible).hasMessageContaining("label");
            put(screen, "p", Map.of("color", "#999", "background", "#888"), "grey on grey");
            assertThatThrownBy(screen::isLegible).hasMessageContaining("grey on grey");
            put(screen, "p", Map.of("color", "#222"), "black, by night as well");
            screen.isLegible();
            assertThatThrownBy(screen.in(Look.TABLET.dark())::isLegible)
                    .hasMessageContaining("black, by night as well");
            screen.in(Look.TABLET);
            put(screen, "p", Map.of("width", "900px"), "as wide as a tablet is not");
            assertThatThrownBy(screen::fits).hasMessageContaining("as wide as a tablet is not");
            screen.in(Look.DESK).fits();
        }
    }

    /** Nothing but this in the page; by script, because the policy of the pages lets no style be written into them. */
    private static void put(Screen screen, String element, Map<String, String> style, String text) {
        screen.page()
                .locator("main")
                .evaluate(
                        "(main, put) => { const one = document.createElement(put.element); one.textContent = put.text;"
                                + " Object.assign(one.style, put.style); main.replaceChildren(one); }",
                        Map.of("element", element, "style", style, "text", text));
    }

    @Test
    void aRefusedFormIsAccessible(Windows windows) {
        Car car = shop().registers(aCar());
        try (Screen screen = windows.open(shop(), Role.MANAGER, Look.PHONE.dark(), true)) {
            screen.to("/cars/" + car.id() + "/install").press("Record").isAccessible();
            screen.to("/parts/new").press("Add it to the catalogue").isAccessible();
            screen.to("/calibrations/new").press("Issue it").isAccessible();
        }
    }

    @Test
    void thePagesOfTheAdministratorAreAccessible(Windows windows) {
        try (Screen screen = windows.open(shop(), Role.ADMIN)) {
            inEveryLook(screen.to("/users"));
            inEveryLook(screen.follow(Role.AUDITOR.user()));
            inEveryLook(screen.to("/password"));
            inEveryLook(screen.to("/settings"));
        }
        try (Screen screen = windows.open(shop(), Look.TABLET, true)) {
            inEveryLook(screen.to("/sign-in"));
        }
    }

    /** What is folded is not looked at: the tables of the pictures, and how the numbers come about. */
    @Test
    void whatIsFoldedIsAccessibleToo(Windows windows) {
        try (Screen screen = windows.open(shop(), Role.MANAGER)) {
            screen.to("/cars/" + aCarThatIsDrawn().id());
            Object unfolded = screen.page()
                    .evaluate("() => { const all = document.querySelectorAll('.plot details, .trace, .trace details');"
                            + " all.forEach(one => one.open = true); return all.length }");
            assertThat((Integer) unfolded).as("pictures and steps").isGreaterThan(6);
            inEveryLook(screen);
        }
    }

    /** Every address that a page has, on a car that shows as much as a car can. */
    private List<String> pages() {
        Car car = aHeldCar();
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        String held = "/cars/" + car.id();
        Part injectors = shop().aPartFor("INJECTORS");
        String drawn = "/cars/" + aCarThatIsDrawn().id();
        String record =
                Answer.textOf(car.history().get(car.history().size() - 1).path("id"));
        Answer log = shop().as(Role.TECH)
                .postFile(finished.car().path("drive-logs"), SentLog.ofALargerIntake(3), Map.of("venue", "DYNO"))
                .is(201);
        // few columns: each of them offers every parameter and every unit, and all that is looked through in every look
        byte[] few = "Time (s);RPM;probe\n0;800;1\n1;810;2\n2;805;3\n".getBytes(StandardCharsets.UTF_8);
        Answer small = shop().as(Role.TECH)
                .postFile(finished.car().path("drive-logs"), few, Map.of())
                .is(201);
        String driven = "/cars/" + finished.car().id();
        Answer advice = shop().asks(about(finished.car()).plus("proposed", proposes(injectors)));
        return List.of(
                "/",
                "/ask",
                "/ask/described",
                held + "/ask",
                held + "/ask?lines%5B0%5D.part=" + injectors.partNumber(),
                "/answers",
                "/answers?named=nothing-like-it",
                "/answers/" + advice.id(),
                "/search?q=northwind",
                "/cars/new",
                "/install",
                "/install?car=northwind",
                held,
                drawn,
                drawn + "/hand-over",
                held + "/install",
                held + "/flash",
                held + "/ecu-check",
                held + "/drive-log",
                driven + "/drive-log/" + small.field("fileSha256"),
                driven + "/drive-logs/" + log.id(),
                held + "/inspect",
                held + "/arrived",
                held + "/acknowledge",
                held + "/hand-over",
                "/cars/" + finished.car().id() + "/hand-over",
                "/handoffs/" + handoff.id() + "/certificate",
                held + "/particulars",
                held + "/history",
                held + "/history?was=2020-01-01T00:00&known=2020-01-01T00:00",
                "/audit",
                "/audit?from=2020-01-01&finding=EXCEPTION",
                "/audit/on-the-road",
                "/policy",
                "/policy?driveLog=defaults",
                "/retunes",
                "/retunes/" + car.openItem().id(),
                "/calibrations",
                "/calibrations/new",
                "/calibrations/" + finished.calibration().id(),
                "/parts",
                "/parts/new",
                "/parts/" + finished.intake().id(),
                "/records/" + record + "/strike-out");
    }

    /** A car of which every picture can be made. */
    private Car aCarThatIsDrawn() {
        List<Part> written = List.of(
                part("AIR_INTAKE", Body.of("sensorBoreMm", 66)),
                part("AIRFLOW_SENSOR", Body.of("transfer", table(1))),
                part("INJECTORS", injectors(440)),
                part("FUEL", Body.of("ethanolPercent", 5)));
        Car car = shop().registers(aCar());
        RevisionDraft draft = RevisionDraft.forThe(car).with("assumes", Body.of("peakAirflowGPerS", 180));
        for (Part part : written) {
            car.fits(part);
            draft = draft.covers(part);
        }
        car.flashes(shop().issues(draft));
        car.fits(part("AIR_INTAKE", Body.of("sensorBoreMm", 73)));
        car.fits(part("AIRFLOW_SENSOR", Body.of("transfer", table(0.8))));
        car.fits(part("INJECTORS", injectors(600)));
        return car;
    }

    private Part part(String category, Body attributes) {
        return shop().catalogues(aPart(category).with("attributes", attributes));
    }

    private static Body injectors(double flow) {
        return Body.of("flowCcPerMin", flow).with("ratedPressureKpa", 300);
    }

    private static List<List<Double>> table(double scale) {
        return List.of(
                List.of(0.5, scale), List.of(1.0, 8 * scale), List.of(2.0, 40 * scale), List.of(4.0, 200 * scale));
    }

    /** Two parts were changed and only one of them has a calibration. */
    private Car aHeldCar() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        car.flashes(calibration);
        car.readsBack(calibration);
        car.fits(shop().aPartFor("INJECTORS"));
        return car;
    }
}
