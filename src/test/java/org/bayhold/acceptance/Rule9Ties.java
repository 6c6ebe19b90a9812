package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Instant;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 9: ties count against release. */
public abstract class Rule9Ties implements OnADatabase {
    private final Instant time = hoursAgo(3);
    private Car car;
    private Part intake;
    private Calibration calibration;

    @BeforeEach
    void aCarAndItsCalibration() {
        car = shop().registers(aCar());
        intake = shop().aPartFor("AIR_INTAKE");
        calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
    }

    @Test
    void aFlashClearsNoChangeOfItsOwnTime() {
        car.changes(fit(intake).at(time));
        car.flashes(flash(calibration).at(time));
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void inWhicheverOrderTheyWereRecorded() {
        car.flashes(flash(calibration).at(time));
        car.changes(fit(intake).at(time));
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void aFlashClearsAChangeThatIsStrictlyEarlier() {
        car.changes(fit(intake).at(time.minusMillis(1)));
        car.flashes(flash(calibration).at(time));
        assertThat(car.gate().outcome("FLASH_AFTER_LAST_CHANGE")).isEqualTo("PASS");
    }

    @Test
    void aReadBackOfTheFlashsOwnTimeProvesNothing() {
        car.changes(fit(intake).at(hoursAgo(4)));
        car.flashes(flash(calibration).at(time));
        car.readsBack(calibration.reading().at(time));
        car.gate().holdsFor("READ_BACK_MATCHES");
    }

    @Test
    void aReadBackThatIsStrictlyLaterDoes() {
        car.changes(fit(intake).at(hoursAgo(4)));
        car.flashes(flash(calibration).at(time));
        car.readsBack(calibration.reading().at(time.plusMillis(1)));
        assertThat(car.gate().outcome("READ_BACK_MATCHES")).isEqualTo("PASS");
    }

    @Test
    void factsOfEqualTimeStandInTheOrderInWhichTheyWereRecorded() {
        car.changes(fit(intake).at(time));
        car.changes(refitFactory("AIR_INTAKE").at(time));
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");

        car.changes(fit(intake).at(time));
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("PART");
    }
}
