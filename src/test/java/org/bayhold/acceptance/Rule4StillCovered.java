package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 4, the basis STILL_COVERED: no new flash, the calibration still matches. */
public abstract class Rule4StillCovered implements OnADatabase {
    private FinishedCar finished;
    private Car car;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
    }

    @Test
    void theLikeForLikeReplacement() {
        car.fits(finished.intake());
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
        car.readsBack(finished.calibration());

        car.clears("STILL_COVERED");

        assertThat(car.items()).anySatisfy(item -> assertThat(item.basis()).isEqualTo("STILL_COVERED"));
        assertThat(car.gate().outcome("FLASH_AFTER_LAST_CHANGE")).isEqualTo("PASS");
        car.gate().isClear();
        car.handsOver();
    }

    @Test
    void theStockPartPutBack() {
        Part turbocharger = shop().aPartFor("TURBOCHARGER");
        car.fits(turbocharger);
        car.changes(refitFactory("TURBOCHARGER"));
        car.readsBack(finished.calibration());

        car.clears("STILL_COVERED");

        car.gate().isClear();
    }

    @Test
    void notWithAnotherPart() {
        car.fits(shop().aPartFor("AIR_INTAKE"));
        car.readsBack(finished.calibration());
        missing("PARTS_COVERED");
    }

    @Test
    void notWithoutAReadBackAfterTheChange() {
        car.fits(finished.intake());
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAReadBackAtTheVeryTimeOfTheChange() {
        Answer change = car.fits(finished.intake());
        car.readsBack(finished.calibration().reading().at(Instant.parse(change.field("effectiveAt"))));
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAReadBackThatDiffers() {
        car.fits(finished.intake());
        car.readsBack(aStrangeReading());
        missing("READ_BACK_MATCHES");
    }

    @Test
    void notOnAWithdrawnRevision() {
        car.fits(finished.intake());
        car.readsBack(finished.calibration());
        shop().withdraws(finished.calibration());
        missing("CALIBRATION_IN_FORCE");
    }

    @Test
    void notAfterAFailedFlash() {
        car.flashes(failedFlash(finished.calibration()));
        car.readsBack(finished.calibration());
        missing("FLASH_COMPLETED");
    }

    @Test
    void notAfterAFileThatIsNotOurs() {
        car.flashes(dealersUpdate());
        car.readsBack(finished.calibration());
        missing("PARTS_COVERED");
    }

    @Test
    void noReadBackIsNeededWherePolicyAsksForNone() {
        car.fits(finished.intake());

        shop().whilePolicySays("readBackRequired", false, () -> car.clears("STILL_COVERED"));

        assertThat(car.findOpenItem()).isEmpty();
    }

    @Test
    void aChangeThatWasNotOnRecordWhenItWasSignedIsNotCoveredByTheSignature() {
        car.fits(finished.intake());
        car.readsBack(finished.calibration());
        car.clears("STILL_COVERED");

        car.fits(finished.intake());

        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
    }

    @Test
    void aLateRecordOfAChangeAfterTheFlashIsNotCoveredByAnEarlierSignature() {
        car.fits(finished.intake());
        Answer readBack = car.readsBack(finished.calibration());
        car.clears("STILL_COVERED");

        car.changes(fit(finished.intake()).at(Instant.parse(readBack.field("effectiveAt"))));

        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
    }

    private void missing(String check) {
        car.asksToClear("STILL_COVERED").lacksEvidenceFor(check);
        assertThat(car.findOpenItem()).isPresent();
    }
}
