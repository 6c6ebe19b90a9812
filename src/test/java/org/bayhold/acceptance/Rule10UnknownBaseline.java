package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.foundFactory;

import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.RevisionDraft;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 10: a car of which nothing was known when it was registered. */
public abstract class Rule10UnknownBaseline implements OnADatabase {
    private Car car;
    private Part intake;
    private Calibration calibration;

    @BeforeEach
    void aCarOfUnknownHistoryWithAnIntake() {
        car = shop().registers(aCarOfUnknownHistory());
        intake = shop().aPartFor("AIR_INTAKE");
        calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
    }

    @Test
    void everyPlaceIsUnknownAndTheCarIsOnHold() {
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("UNKNOWN");
        assertThat(car.stateOf("ECU")).isEqualTo("UNKNOWN");
        assertThat(car.openItem().causes()).containsExactly("UNKNOWN_BASELINE");
        car.gate().holdsFor("PARTS_KNOWN", "FLASH_COMPLETED", "PARTS_COVERED", "RETUNE_CLEARED");
        car.asksToLeave().isHeld();
    }

    @Test
    void unknownBecomingKnownIsNotAChange() {
        RetuneItem item = car.openItem();

        Answer inspection = car.isInspectedThroughout(intake);

        assertThat(Answer.elements(inspection.json().path("differences"))).isEmpty();
        assertThat(car.openItem().id()).isEqualTo(item.id());
        assertThat(car.openItem().causes()).containsExactly("UNKNOWN_BASELINE");
        assertThat(car.gate().outcome("PARTS_KNOWN")).isEqualTo("PASS");
        car.gate().holdsFor("FLASH_COMPLETED", "RETUNE_CLEARED");
    }

    @Test
    void anInspectionOfOnePlaceLeavesTheOthersUnknown() {
        car.isInspected(foundFactory("TURBOCHARGER"));

        assertThat(car.stateOf("TURBOCHARGER")).isEqualTo("FACTORY");
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("UNKNOWN");
        car.gate().holdsFor("PARTS_KNOWN");
    }

    @Test
    void anInspectionAndAFlashMakeItWhole() {
        car.isInspectedThroughout(intake);
        car.flashes(calibration);
        car.readsBack(calibration);
        car.clears("FLASHED");
        car.acknowledges();

        car.gate().isClear();
        car.handsOver();
    }

    @Test
    void aFlashWithoutAnInspectionDoesNot() {
        car.flashes(calibration);
        car.readsBack(calibration);

        car.asksToClear("FLASHED").lacksEvidenceFor("PARTS_COVERED");
    }

    @Test
    void aRevisionIsFoundByItsReadBack() {
        car.isInspectedThroughout(intake);

        Answer readBack = car.readsBack(calibration);

        assertThat(readBack.json().path("matches").asBoolean()).isTrue();
        assertThat(car.gate().outcome("FLASH_COMPLETED")).isEqualTo("PASS");
        assertThat(car.gate().outcome("FLASH_AFTER_LAST_CHANGE")).isEqualTo("PASS");
        assertThat(car.gate().outcome("CALIBRATION_IN_FORCE")).isEqualTo("PASS");
        assertThat(car.gate().outcome("PARTS_COVERED")).isEqualTo("PASS");
        assertThat(car.openItem().causes()).containsExactly("UNKNOWN_BASELINE");

        car.clears("STILL_COVERED");
        car.acknowledges();
        car.gate().isClear();
        car.handsOver();
    }

    @Test
    void orFoundByTheHashOfItsFile() {
        Calibration silent =
                shop().issues(RevisionDraft.forThe(car).covers(intake).knownByItsHashAlone());
        car.isInspectedThroughout(intake);

        car.readsBack(silent);

        assertThat(car.gate().outcome("FLASH_COMPLETED")).isEqualTo("PASS");
        car.clears("STILL_COVERED");
    }

    @Test
    void aRevisionForOtherEcuHardwareIsNotFound() {
        Calibration others =
                shop().issues(RevisionDraft.forEcu(car.ecuHardware() + "-B").covers(intake));
        car.isInspectedThroughout(intake);

        car.readsBack(others);

        car.gate().holdsFor("FLASH_COMPLETED", "RETUNE_CLEARED");
        car.asksToClear("STILL_COVERED").lacksEvidenceFor("FLASH_COMPLETED");
    }

    @Test
    void aWithdrawnRevisionIsNotFound() {
        shop().withdraws(calibration);
        car.isInspectedThroughout(intake);

        car.readsBack(calibration);

        car.gate().holdsFor("FLASH_COMPLETED", "RETUNE_CLEARED");
    }

    @Test
    void aFoundRevisionMustCoverWhatTheInspectionFound() {
        car.isInspectedThroughout(shop().aPartFor("AIR_INTAKE"));
        car.readsBack(calibration);

        car.gate().holdsFor("PARTS_COVERED");
        car.asksToClear("STILL_COVERED").lacksEvidenceFor("PARTS_COVERED");
    }

    @Test
    void anotherRevisionReadBackLaterIsAReadBackThatDiffers() {
        Calibration other = shop().issues(RevisionDraft.forThe(car).covers(intake));
        car.isInspectedThroughout(intake);
        car.readsBack(calibration);

        Answer readBack = car.readsBack(other);

        assertThat(readBack.json().path("matches").asBoolean()).isFalse();
        assertThat(car.openItem().causes()).isEqualTo(List.of("UNKNOWN_BASELINE", "READ_BACK_DIFFERS"));
        car.gate().holdsFor("READ_BACK_MATCHES");
    }
}
