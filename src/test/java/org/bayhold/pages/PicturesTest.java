package org.bayhold.pages;

import com.microsoft.playwright.Locator;
import org.bayhold.support.Browser;
import org.bayhold.support.Browser.Look;
import org.bayhold.support.Browser.Windows;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Role;
import org.bayhold.support.Screen;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A walk through the demo shop, by clicks alone; with {@code -Dbayhold.pictures=true} it renews docs/pictures. */
@ExtendWith(Browser.class)
class PicturesTest {
    private static final String FITTED = "Aldermoor Finch 2.0 hatchback";
    private static final String DONE = "Aldermoor Finch 2.0 saloon";

    @Test
    void theDemoShopCanBeWalkedThrough(Windows windows) throws Exception {
        try (FreshBayhold demo = FreshBayhold.withTheDemoShop(FreshBayhold.Store.h2())) {
            tablet(windows, demo.shop());
            desk(windows, demo.shop());
            dark(windows, demo.shop());
            phone(windows, demo.shop());
        }
    }

    private static void tablet(Windows windows, Shop shop) {
        try (Screen screen = windows.open(shop, Role.MANAGER)) {
            screen.to("/").fits().picture("today");
            car(screen, "TS 4471").click();
            screen.shows(FITTED).fits().picture("car");
            screen.follow("Hand over")
                    .shows("We cannot give you the car yet.")
                    .fits()
                    .picture("hand-over");
            screen.follow("Retunes").shows("risk EXTREME").fits().picture("retunes");
            screen.follow("Calibrations").fits().picture("calibrations");
            screen.to("/");
            car(screen, "TS 9135").click();
            screen.shows("The same in pictures")
                    .unfold("How these numbers come about")
                    .fits();
            screen.to(screen.path() + "/ask").type("Add a part", "TW850").press("Answer");
            screen.shows("Retune first.").fits().picture("ask");
            screen.to("/");
            car(screen, "TS 2093").click();
            screen.shows(DONE).follow("The car through time").shows("Its time in one picture");
            screen.page().locator(".time-line").scrollIntoViewIfNeeded();
            screen.fits().picture("time-line");
            screen.follow("Audit").shows("Findings by month").fits();
            screen.page().locator(".months").scrollIntoViewIfNeeded();
            screen.picture("audit");
            screen.to("/");
            car(screen, "TS 2093").click();
            screen.follow("handed over CLEAR, certificate");
            screen.fits().picture("certificate");
            screen.to("/");
            car(screen, "KR 0937").click();
            screen.follow("PASS").shows("Within normal correction").fits();
            screen.page().locator("figure.trim-map").first().evaluate("map => map.scrollIntoView()");
            screen.picture("drive-log");
            screen.follow("Policy")
                    .shows("What the drive-log check calls normal")
                    .fits();
        }
    }

    private static void desk(Windows windows, Shop shop) {
        try (Screen screen = windows.open(shop, Role.CALIBRATOR, Look.DESK, true)) {
            screen.to("/");
            car(screen, "TS 9135").click();
            screen.shows("The same in pictures").fits();
            screen.page().locator("#now-pictures").evaluate("heading => heading.scrollIntoView()");
            screen.picture("prediction");
        }
    }

    private static void dark(Windows windows, Shop shop) {
        try (Screen screen = windows.open(shop, Role.WRITER, Look.TABLET.dark(), true)) {
            screen.to("/").fits().picture("today-dark");
            car(screen, "TS 4471").click();
            screen.follow("Log an install").fits().picture("install-dark");
        }
    }

    private static void phone(Windows windows, Shop shop) {
        try (Screen screen = windows.open(shop, Role.TECH, Look.PHONE, true)) {
            screen.to("/").fits().picture("today-phone");
            car(screen, "TS 5120").click();
            screen.fits().picture("car-phone");
            screen.follow("ECU check").fits().picture("ecu-check-phone");
        }
    }

    private static Locator car(Screen screen, String plate) {
        return screen.page()
                .locator(".job", new com.microsoft.playwright.Page.LocatorOptions().setHasText(plate))
                .locator("a")
                .first();
    }
}
