package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.bayhold.drivelog.SentLog;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Look;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.Car;
import org.bayhold.support.OnH2;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Sending a drive log, in a real browser. */
@ExtendWith(Browser.class)
class DriveLogTest implements OnH2 {
    private static FilePayload file(byte[] csv) {
        return new FilePayload("drive.csv", "text/csv", csv);
    }

    @Test
    void aTechnicianSendsALogAndReadsWhatItShows(Windows windows) {
        Car car = shop().finishesACar().car();
        try (Screen screen = windows.open(shop(), Role.TECH)) {
            screen.to("/cars/" + car.id() + "/drive-log").shows("A drive at full load can kill.");
            screen.page().setInputFiles("#file", file(SentLog.ofALargerIntake(41)));
            screen.press("Send the file");
            screen.page().waitForURL("**/drive-log/*");
            screen.page().getByLabel("Where it was driven").selectOption("DYNO");
            screen.page().locator("main form button").first().click();
            screen.page().waitForURL("**/drive-logs/*");

            screen.shows("The drive log failed");
            screen.shows("Error at any flow");
            assertThat(screen.page().locator("figure.trim-map .cell.BEYOND").count())
                    .isPositive();
            screen.fits();
        }
        assertThat(car.gate().outcome("DRIVE_LOG_PASSED")).isEqualTo("FAIL");
    }

    @Test
    void aFileThatIsNoLogIsRefusedOnThePageThatSentIt(Windows windows) {
        Car car = shop().finishesACar().car();
        String form = "/cars/" + car.id() + "/drive-log";
        for (boolean scripts : List.of(true, false)) {
            try (Screen screen = windows.open(shop(), Role.TECH, Look.PHONE, scripts)) {
                screen.to(form).press("Send the file");
                waitFor(screen, "Choose the file");
                screen.page().setInputFiles("#file", file("just words".getBytes(StandardCharsets.UTF_8)));
                screen.press("Send the file");
                waitFor(screen, "This is no table of values");
                screen.isAt(form).fits();
                // and the page that came in its place sends as well
                screen.page().setInputFiles("#file", file(SentLog.sound(42)));
                screen.press("Send the file");
                screen.page().waitForURL("**/drive-log/*");
            }
        }
        assertThat(car.gate().outcome("DRIVE_LOG_PASSED")).isEqualTo("NOT_REQUIRED");
    }

    @Test
    void withoutScriptsALogIsSentAndSentAgainAndJudgedAgain(Windows windows) {
        Car car = shop().finishesACar().car();
        try (Screen screen = windows.open(shop(), Role.TECH, Look.TABLET, false)) {
            String first = judged(screen, car, SentLog.sound(43));
            screen.shows("The drive log passed").fits();

            String second = judged(screen, car, SentLog.sound(43));
            assertThat(second).as("the same file is the same drive").isEqualTo(first);

            screen.press("Judge again");
            screen.page().waitForURL(url -> url.contains("/drive-logs/") && !url.endsWith(first));
            assertThat(screen.page().locator("ol.records a").count()).isEqualTo(2);
        }
    }

    /** What a calibrator says of a heading is known when the next file comes. */
    @Test
    void whatAHeadingHoldsIsSaidOnce(Windows windows) {
        Car car = shop().finishesACar().car();
        String heading = "Probe of " + car.id();
        try (Screen screen = windows.open(shop(), Role.CALIBRATOR)) {
            sends(screen, car, renamed(44, heading));
            screen.page().getByLabel("What " + heading + " holds").selectOption("MEASURED_LAMBDA");
            screen.page().locator("input[name=remember]").check();
            judges(screen);
            screen.shows("The drive log passed");

            sends(screen, car, renamed(45, heading));
            assertThat(screen.page().getByLabel("What " + heading + " holds").evaluate("select => select.value"))
                    .isEqualTo("MEASURED_LAMBDA");
        }
    }

    private static byte[] renamed(long seed, String heading) {
        return new String(SentLog.sound(seed), StandardCharsets.UTF_8)
                .replaceFirst("Lambda,", heading + ",")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** Sends and judges; gives the end of the address where the result stands. */
    private static String judged(Screen screen, Car car, byte[] csv) {
        sends(screen, car, csv);
        return judges(screen);
    }

    private static void sends(Screen screen, Car car, byte[] csv) {
        screen.to("/cars/" + car.id() + "/drive-log").page().setInputFiles("#file", file(csv));
        screen.press("Send the file");
        screen.page().waitForURL("**/drive-log/*");
    }

    private static String judges(Screen screen) {
        screen.page().locator("main form button").first().click();
        screen.page().waitForURL("**/drive-logs/*");
        return screen.path().replaceFirst(".*/", "");
    }

    private static void waitFor(Screen screen, String text) {
        screen.page().getByText(text).first().waitFor();
    }
}
