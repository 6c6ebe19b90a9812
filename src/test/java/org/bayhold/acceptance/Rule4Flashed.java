package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.hoursAgo;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 4, the basis FLASHED: what a retune item is signed off on. */
public abstract class Rule4Flashed implements OnADatabase {
    private Car car;
    private Part intake;
    private Calibration calibration;

    @BeforeEach
    void aCarWithAnotherIntake() {
        car = shop().registers(aCar());
        intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
    }

    @Test
    void aCompletedFlashAndAMatchingReadBackClearTheItem() {
        String itemId = car.openItem().id();
        car.flashes(calibration);
        car.readsBack(calibration);

        car.clears("FLASHED");

        assertThat(car.findOpenItem()).isEmpty();
        RetuneItem cleared = car.items().get(0);
        assertThat(cleared.id()).isEqualTo(itemId);
        assertThat(cleared.status()).isEqualTo("CLEARED");
        assertThat(cleared.basis()).isEqualTo("FLASHED");
        assertThat(cleared.clearedAt()).isNotEmpty();
        assertThat(car.gate().outcome("RETUNE_CLEARED")).isEqualTo("PASS");
    }

    @Test
    void notWithoutAFlash() {
        missing("FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void notOnAFailedFlash() {
        car.flashes(failedFlash(calibration));
        car.readsBack(calibration);
        missing("FLASH_COMPLETED");
    }

    @Test
    void notOnAFileThatIsNotOurs() {
        car.flashes(dealersUpdate());
        missing("PARTS_COVERED");
    }

    @Test
    void notOnAFlashBeforeTheLastChange() {
        car.flashes(calibration);
        car.fits(intake);
        car.readsBack(calibration);
        missing("FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void notOnAFlashAtTheVeryTimeOfTheChange() {
        Instant time = hoursAgo(2);
        Car tied = shop().registers(aCar());
        tied.changes(fit(intake).at(time));
        Calibration its = shop().issues(RevisionDraft.forThe(tied).covers(intake));
        tied.flashes(flash(its).at(time));
        tied.readsBack(its);
        tied.asksToClear("FLASHED").lacksEvidenceFor("FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void notOnAWithdrawnRevision() {
        car.flashes(calibration);
        car.readsBack(calibration);
        shop().withdraws(calibration);
        missing("CALIBRATION_IN_FORCE");
    }

    @Test
    void notOnARevisionThatDoesNotCoverTheWholeBuildSheet() {
        Calibration forFactoryParts = shop().issues(RevisionDraft.forThe(car));
        car.flashes(forFactoryParts);
        car.readsBack(forFactoryParts);
        missing("PARTS_COVERED");
    }

    @Test
    void notWithoutAReadBack() {
        car.flashes(calibration);
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAReadBackThatDiffers() {
        car.flashes(calibration);
        car.readsBack(aStrangeReading());
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAReadBackFromBeforeTheFlash() {
        car.readsBack(calibration);
        car.flashes(calibration);
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAReadBackAtTheVeryTimeOfTheFlash() {
        Answer flash = car.flashes(calibration);
        car.readsBack(calibration.reading().at(Instant.parse(flash.field("effectiveAt"))));
        missing("READ_BACK_MATCHES");
    }

    @Test
    void noReadBackIsNeededWherePolicyAsksForNone() {
        car.flashes(calibration);

        shop().whilePolicySays("readBackRequired", false, () -> {
            assertThat(car.gate().outcome("READ_BACK_MATCHES")).isEqualTo("NOT_REQUIRED");
            car.clears("FLASHED");
        });

        assertThat(car.findOpenItem()).isEmpty();
    }

    @Test
    void aRefusedSignOffLeavesTheItemOpenAndTheRecordAsItWas() {
        int before = car.history().size();
        missing("FLASH_AFTER_LAST_CHANGE");
        assertThat(car.history()).hasSize(before);
    }

    @Test
    void whoFlashedMaySignWherePolicyAsksForNoSecondPerson() {
        shop().as(Role.CALIBRATOR).post(car.path("flashes"), flash(calibration)).is(201);
        car.readsBack(calibration);
        car.clears("FLASHED");
    }

    @Test
    void whoFlashedMayNotSignWherePolicyAsksForASecondPerson() {
        shop().as(Role.CALIBRATOR).post(car.path("flashes"), flash(calibration)).is(201);
        car.readsBack(calibration);

        shop().whilePolicySays("secondPersonRequired", true, () -> {
            assertThat(car.asksToClear(Role.CALIBRATOR, "FLASHED").status()).isIn(403, 409);
            assertThat(car.findOpenItem()).isPresent();

            car.asksToClear(Role.MANAGER, "FLASHED").is(200);
        });

        assertThat(car.findOpenItem()).isEmpty();
    }

    @Test
    void anItemIsSignedOffOnce() {
        String itemId = car.openItem().id();
        car.flashes(calibration);
        car.readsBack(calibration);
        car.clears("FLASHED");
        int before = car.history().size();

        Answer again =
                shop().as(Role.CALIBRATOR).post("/retune-items/" + itemId + "/clearance", Body.of("basis", "FLASHED"));

        again.isProblem(409, "conflict");
        assertThat(car.history()).hasSize(before);
    }

    private void missing(String check) {
        car.asksToClear("FLASHED").lacksEvidenceFor(check);
        assertThat(car.findOpenItem()).isPresent();
    }
}
