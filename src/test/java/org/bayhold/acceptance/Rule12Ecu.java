package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 12: another ECU, and revisions that do not belong on a car. */
public abstract class Rule12Ecu implements OnADatabase {
    private FinishedCar finished;
    private Car car;
    private Part ecu;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
        ecu = shop().aPartFor("ECU");
    }

    @Test
    void whatWasFlashedBeforeAnotherEcuCountsNoMore() {
        car.changes(fit(ecu).with("ecuHardware", "HW-OTHER-1"));

        car.gate().holdsFor("FLASH_COMPLETED", "FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
        car.readsBack(finished.calibration());
        car.asksToClear("STILL_COVERED").lacksEvidenceFor("FLASH_COMPLETED");
    }

    @Test
    void theSameHardwareAgainIsStillAnotherEcu() {
        car.changes(refitFactory("ECU").with("ecuHardware", car.ecuHardware()));

        car.gate().holdsFor("FLASH_COMPLETED", "RETUNE_CLEARED");
    }

    @Test
    void theCarsHardwareIsThatOfItsLastEcu() {
        car.changes(fit(ecu).with("ecuHardware", "HW-OTHER-2"));

        Answer vehicle = shop().as(Role.WRITER).get(car.path("")).is(200);

        assertThat(vehicle.field("ecuHardware")).isEqualTo("HW-OTHER-2");
    }

    @Test
    void aRevisionForTheNewHardwareMakesItWhole() {
        car.changes(fit(ecu).with("ecuHardware", "HW-OTHER-3"));
        Calibration next = shop().issues(RevisionDraft.forEcu("HW-OTHER-3")
                .covers(finished.intake())
                .covers(ecu));

        car.flashes(next);
        car.readsBack(next);
        car.clears("FLASHED");

        car.gate().isClear();
    }

    @Test
    void theShopFlashesNoRevisionForOtherHardware() {
        car.changes(fit(ecu).with("ecuHardware", "HW-OTHER-4"));
        int before = car.history().size();

        car.asksToFlash(flash(finished.calibration())).isInvalid("calibrationId");

        assertThat(car.history()).hasSize(before);
    }

    @Test
    void theShopFlashesNoWithdrawnRevision() {
        Calibration withdrawn = shop().issues(RevisionDraft.forThe(car).covers(finished.intake()));
        shop().withdraws(withdrawn);
        int before = car.history().size();

        car.asksToFlash(flash(withdrawn)).isInvalid("calibrationId");

        assertThat(car.history()).hasSize(before);
    }

    @Test
    void aFlashFromBeforeTheWithdrawalIsRecordedLate() {
        Calibration withdrawn = shop().issues(RevisionDraft.forThe(car).covers(finished.intake()));
        Instant inForce = Instant.now();
        shop().withdraws(withdrawn);

        car.flashes(flash(withdrawn).at(inForce));

        car.gate().holdsFor("CALIBRATION_IN_FORCE", "RETUNE_CLEARED");
    }

    @Test
    void whatOthersDidIsRecordedAsItWas() {
        Calibration forOtherHardware =
                shop().issues(RevisionDraft.forEcu("HW-OTHER-5").covers(finished.intake()));
        Calibration withdrawn = shop().issues(RevisionDraft.forThe(car).covers(finished.intake()));
        shop().withdraws(withdrawn);

        car.flashes(flash(withdrawn).reported());
        car.gate().holdsFor("CALIBRATION_IN_FORCE");

        car.flashes(flash(forOtherHardware).reported());
    }
}
