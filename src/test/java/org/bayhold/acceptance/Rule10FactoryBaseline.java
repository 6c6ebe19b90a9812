package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarWithoutFactoryReading;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.foundFactory;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.inspection;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Instant;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 10: a car that was factory when it was registered. */
public abstract class Rule10FactoryBaseline implements OnADatabase {

    @Test
    void whileItIsFactoryThroughoutItIsClear() {
        Car car = shop().registers(aCar());

        car.gate().isClear();
        assertThat(car.findOpenItem()).isEmpty();
        car.handsOver();
    }

    @Test
    void factsOfAnyDateStandUponTheBaseline() {
        Car car = shop().registers(aCar());
        Instant longAgo = Instant.parse("1999-05-01T08:00:00Z");

        car.changes(fit(shop().aPartFor("EXHAUST_REAR")).at(longAgo));

        assertThat(Car.stateOf(car.buildSheet(longAgo.minusSeconds(1), Instant.now()), "EXHAUST_REAR"))
                .isEqualTo("FACTORY");
        assertThat(Car.stateOf(car.buildSheet(longAgo, Instant.now()), "EXHAUST_REAR"))
                .isEqualTo("PART");
        car.gate().holdsFor("PARTS_COVERED", "RETUNE_CLEARED");
    }

    @Test
    void theStockPartPutBackNeedsAReadBackAfterTheChange() {
        Car car = aCarWhoseStockIntakeWasPutBack(aCar());
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");

        car.asksToClear("STILL_COVERED").lacksEvidenceFor("READ_BACK_MATCHES");

        car.readsBack(car.factoryReading());
        car.clears("STILL_COVERED");
        car.gate().isClear();
        car.handsOver();
    }

    @Test
    void theReadBackEqualsWhatTheCarWasRegisteredWith() {
        Car car = aCarWhoseStockIntakeWasPutBack(aCar());

        car.readsBack(aStrangeReading());

        car.asksToClear("STILL_COVERED").lacksEvidenceFor("READ_BACK_MATCHES");
    }

    @Test
    void orItEqualsAFirstReadBackFromBeforeTheFirstChange() {
        Body reading = aStrangeReading();
        Car car = shop().registers(aCarWithoutFactoryReading());
        car.readsBack(reading);
        car.gate().isClear();
        putsTheStockIntakeBack(car);

        car.readsBack(reading);

        car.clears("STILL_COVERED");
        car.gate().isClear();
    }

    @Test
    void aFirstReadBackMayBeRecordedLate() {
        Body reading = aStrangeReading();
        Car car = aCarWhoseStockIntakeWasPutBack(aCarWithoutFactoryReading());
        car.readsBack(reading.at(hoursAgo(2)));

        car.readsBack(reading);

        car.clears("STILL_COVERED");
    }

    @Test
    void aReadBackAfterTheFirstChangeTellsNothingOfTheFactory() {
        Body reading = aStrangeReading();
        Car car = aCarWhoseStockIntakeWasPutBack(aCarWithoutFactoryReading());

        car.readsBack(reading);
        car.readsBack(reading);

        car.asksToClear("STILL_COVERED").lacksEvidenceFor("READ_BACK_MATCHES");
    }

    @Test
    void itIsNotStillCoveredWithAnotherPartOn() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));
        car.readsBack(car.factoryReading());

        car.asksToClear("STILL_COVERED").lacksEvidenceFor("PARTS_COVERED");
    }

    @Test
    void aLateRecordTurnsAnEarlierInspectionIntoOneThatContradicts() {
        Car car = shop().registers(aCar());
        Answer confirming = car.isInspectedAs(
                inspection(List.of(foundFactory("AIR_INTAKE"))).at(hoursAgo(2)));
        assertThat(Answer.elements(confirming.json().path("differences"))).isEmpty();
        assertThat(car.findOpenItem()).isEmpty();

        car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(hoursAgo(3)));

        assertThat(car.openItem().causes()).contains("INSPECTION_CONTRADICTS");
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
    }

    private Car aCarWhoseStockIntakeWasPutBack(Body registration) {
        Car car = shop().registers(registration);
        putsTheStockIntakeBack(car);
        return car;
    }

    private void putsTheStockIntakeBack(Car car) {
        car.fits(shop().aPartFor("AIR_INTAKE"));
        car.changes(refitFactory("AIR_INTAKE"));
    }
}
