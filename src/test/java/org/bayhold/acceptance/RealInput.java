package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCustomer;
import static org.bayhold.support.Facts.acknowledgement;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Instant;
import java.util.Locale;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.bayhold.support.Vins;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What comes over the counter of a real workshop. */
public abstract class RealInput implements OnADatabase {

    @Test
    void aVinWhoseCheckDigitHolds() {
        Answer car = shop().as(Role.WRITER).post("/vehicles", aCar()).is(201);

        assertThat(car.header("Location")).endsWith(car.id());
        assertThat(Answer.elements(car.json().path("warnings"))).isEmpty();
    }

    @Test
    void aEuropeanVinMayHaveNoCheckDigit() {
        Body registration = aCar().with("vin", Vins.european());

        Answer car = shop().as(Role.WRITER).post("/vehicles", registration).is(201);

        assertThat(Answer.elements(car.json().path("warnings"))).isNotEmpty();
        assertThat(shop().as(Role.WRITER).list("/vehicles?vin=" + registration.text("vin")))
                .hasSize(1);
    }

    @Test
    void aVinInSmallLettersIsTheSameVin() {
        String vin = Vins.next();
        shop().registers(aCar().with("vin", vin.toLowerCase(Locale.ROOT)));

        assertThat(shop().as(Role.WRITER).list("/vehicles?vin=" + vin)).hasSize(1);
    }

    @Test
    void aCarWithAFrameNumberOnly() {
        String frame = "XR1-" + Vins.next().substring(11);
        Car car = shop().registers(aCar().without("vin").with("frameNumber", frame));

        assertThat(shop().as(Role.WRITER).get(car.path("")).is(200).field("frameNumber"))
                .isEqualTo(frame);
        car.gate().isClear();
        car.handsOver();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Ødegård Šimůnková", "Ξένια Μαυρίδη", "寺田 実花", "داليا منصور", "Ndéye-Ọlá O’Brannagh", "𠮷田 🏁"})
    void aCustomerWithAnyName(String name) {
        Car car = shop().registers(aCar().with("customer", aCustomer().with("name", name)));
        car.acknowledges(acknowledgement().with("signedBy", name));

        Answer vehicle = shop().as(Role.WRITER).get(car.path("")).is(200);

        assertThat(Answer.textOf(vehicle.json().path("customer").path("name"))).isEqualTo(name);
        assertThat(shop().as(Role.WRITER).list("/vehicles?q=" + Shop.encoded(name)))
                .extracting(found -> Answer.textOf(found.path("id")))
                .contains(car.id());
    }

    @Test
    void searchMindsNoCase() {
        Car car = shop().registers(aCar().with("plate", "Kx " + Vins.next().substring(11)));
        String plate = shop().as(Role.WRITER).get(car.path("")).is(200).field("plate");

        for (String text : new String[] {plate.toLowerCase(Locale.ROOT), plate.toUpperCase(Locale.ROOT)}) {
            assertThat(shop().as(Role.WRITER).list("/vehicles?q=" + Shop.encoded(text)))
                    .extracting(found -> Answer.textOf(found.path("id")))
                    .containsExactly(car.id());
        }
    }

    @Test
    void theHourThatAClockChangeRepeatsKeepsItsOrder() {
        Car car = shop().registers(aCar());
        // in Central Europe both were half past two in the morning of 27 October 2024
        Instant summer = Instant.parse("2024-10-27T00:30:00Z");
        Instant winter = Instant.parse("2024-10-27T01:30:00Z");
        car.changes(refitFactory("AIR_INTAKE").at(winter));
        car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(summer));

        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
        assertThat(Car.stateOf(car.buildSheet(winter.minusSeconds(1), Instant.now()), "AIR_INTAKE"))
                .isEqualTo("PART");
    }

    @Test
    void anOdometerThatRunsBackwardsIsAWarning() {
        Car car = shop().registers(aCar().with("odometerKm", 90_000));

        Answer change = car.changes(fit(shop().aPartFor("AIR_INTAKE")).with("odometerKm", 70_000));
        Answer forwards = car.changes(fit(shop().aPartFor("AIR_FILTER")).with("odometerKm", 90_001));

        assertThat(Answer.elements(change.json().path("warnings"))).isNotEmpty();
        assertThat(Answer.elements(forwards.json().path("warnings"))).isEmpty();
    }

    @Test
    void anEcuThatReportsWhatTheStandardDoesNotKnowIsRecordedWithAWarning() {
        Car car = shop().registers(aCar());

        Answer check = shop().as(Role.TECH)
                .post(
                        car.path("read-backs"),
                        Body.of("calid", "ABCDEFGHIJKLMNOPQ").with("cvn", "2D99C26CFF"))
                .is(201);

        assertThat(Answer.elements(check.json().path("warnings")).stream().map(Answer::textOf))
                .containsExactly("CALID_LONGER_THAN_16", "CVN_NOT_8_HEX_DIGITS");
    }

    @Test
    void theSameInstallSentTwiceIsRecordedOnce() {
        Car car = shop().registers(aCar());
        Body install = fit(shop().aPartFor("AIR_INTAKE"));
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());
        int before = car.history().size();

        Answer first = counter.post(car.path("part-changes"), install).is(201);
        int after = car.history().size();
        Answer second = counter.post(car.path("part-changes"), install).is(201);

        assertThat(second.id()).isEqualTo(first.id());
        assertThat(after).isGreaterThan(before);
        assertThat(car.history()).hasSize(after);
        assertThat(car.openItem().causes()).containsExactly("PART_CHANGED");
    }

    @Test
    void anInstallEnteredADayLateHoldsTheCar() {
        Car car = shop().registers(aCar());

        Answer install = car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(hoursAgo(25)));

        assertThat(install.field("retuneItemId")).isEqualTo(car.openItem().id());
        car.asksToLeave().isHeld();
    }

    @Test
    void anEcuThatReportsNoCalidIsCheckedByTheHashOfItsFile() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        Calibration silent =
                shop().issues(RevisionDraft.forThe(car).covers(intake).knownByItsHashAlone());
        car.flashes(silent);

        assertThat(car.readsBack(silent).json().path("matches").asBoolean()).isTrue();

        car.clears("FLASHED");
        car.acknowledges();
        car.gate().isClear();
    }

    @Test
    void aDealersUpdateThatNobodyOrdered() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();

        finished.car().flashes(dealersUpdate());

        assertThat(finished.car().openItem().causes()).containsExactly("FLASH_NOT_OURS");
        finished.car().gate().holdsFor("PARTS_COVERED", "RETUNE_CLEARED");
    }

    @Test
    void aCustomerWhoRefittedTheStockPartAtHome() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();

        finished.car().changes(refitFactory("AIR_INTAKE").reported());

        assertThat(finished.car().openItem().causes()).containsExactly("PART_CHANGED");
        finished.car().gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "PARTS_COVERED", "RETUNE_CLEARED");
    }

    @Test
    void workOnACarThatIsOutImpliesThatItCameIn() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();

        Answer change = finished.car().fits(shop().aPartFor("AIR_FILTER"));

        assertThat(change.text()).containsIgnoringCase("arriv");
    }
}
