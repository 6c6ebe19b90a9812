package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.FilePayload;
import org.bayhold.drivelog.SentLog;
import org.bayhold.support.Browser;
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
}
