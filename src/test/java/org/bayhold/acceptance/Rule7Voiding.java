package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.voiding;

import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** {@code docs/rules.md}, rule 7: nothing is deleted or edited, a wrong record is struck out. */
public abstract class Rule7Voiding implements OnADatabase {
    private FinishedCar finished;
    private Car car;

    @BeforeEach
    void aFinishedCar() {
        finished = shop().finishesACar();
        car = finished.car();
    }

    @Test
    void aStruckOutRecordStaysInTheHistoryAndIsMarked() {
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));
        int before = car.history().size();

        car.strikesOut(wrong);

        assertThat(car.history()).hasSizeGreaterThan(before);
        assertThat(isMarkedVoided(car.record(wrong.id()).orElseThrow())).isTrue();
        assertThat(car.stateOf("DOWNPIPE")).isEqualTo("FACTORY");
    }

    @Test
    void noRecordIsDeletedOrEdited() {
        Answer change = car.fits(shop().aPartFor("DOWNPIPE"));
        List<JsonNode> before = car.history();

        for (String path : List.of("/records/" + change.id(), car.path("part-changes/" + change.id()), car.path(""))) {
            assertThat(shop().as(Role.MANAGER).delete(path).status()).isIn(404, 405);
            assertThat(shop().as(Role.MANAGER).put(path, Body.empty()).status()).isIn(404, 405);
        }

        assertThat(car.history()).isEqualTo(before);
    }

    @Test
    void strikingOutNeedsAReason() {
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));
        List<JsonNode> before = car.history();

        car.asksToStrikeOut(wrong.id(), Body.empty()).isInvalid("reason");
        car.asksToStrikeOut(wrong.id(), Body.of("reason", "  ")).isInvalid("reason");

        assertThat(car.history()).isEqualTo(before);
    }

    @Test
    void aRecordIsStruckOutOnce() {
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));
        car.strikesOut(wrong);
        List<JsonNode> before = car.history();

        car.asksToStrikeOut(wrong.id(), voiding()).isProblem(409, "conflict");

        assertThat(car.history()).isEqualTo(before);
    }

    @Test
    void aRightRecordMayComeWithIt() {
        Part right = shop().aPartFor("CHARGE_COOLER");
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));

        car.strikesOut(wrong.id(), voiding().with("replacement", fit(right)));

        assertThat(car.stateOf("DOWNPIPE")).isEqualTo("FACTORY");
        assertThat(car.stateOf("CHARGE_COOLER")).isEqualTo("PART");
        car.gate().holdsFor("RETUNE_CLEARED", "PARTS_COVERED");
    }

    @Test
    void anItemWhoseCausesAreAllStruckOutCloses() {
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));
        String itemId = car.openItem().id();

        car.strikesOut(wrong);

        assertThat(car.findOpenItem()).isEmpty();
        RetuneItem closed = theItem(itemId);
        assertThat(closed.status()).isEqualTo("CLEARED");
        assertThat(closed.basis()).isEqualTo("CAUSES_VOIDED");
        car.gate().isClear();
    }

    @Test
    void onAFactoryCarToo() {
        Car factory = shop().registers(aCar());
        Answer wrong = factory.fits(shop().aPartFor("DOWNPIPE"));

        factory.strikesOut(wrong);

        assertThat(factory.findOpenItem()).isEmpty();
        factory.gate().isClear();
    }

    @Test
    void anItemWithACauseLeftStaysOpen() {
        Answer wrong = car.fits(shop().aPartFor("DOWNPIPE"));
        car.fits(shop().aPartFor("CHARGE_COOLER"));
        String itemId = car.openItem().id();

        car.strikesOut(wrong);

        assertThat(car.openItem().id()).isEqualTo(itemId);
        car.gate().holdsFor("RETUNE_CLEARED");
    }

    @Test
    void theReadBackThatASignOffRestsOn() {
        String closed = theOnlyItem().id();

        car.strikesOut(finished.readBack());

        evidenceIsMissingSince(closed, "READ_BACK_MATCHES");
    }

    @Test
    void theFlashThatASignOffRestsOn() {
        String closed = theOnlyItem().id();

        car.strikesOut(finished.flash());

        evidenceIsMissingSince(closed, "FLASH_AFTER_LAST_CHANGE");
    }

    @Test
    void theSignOffItself() {
        car.fits(finished.intake());
        car.flashes(finished.calibration());
        car.readsBack(finished.calibration());
        String itemId = car.openItem().id();
        List<String> signOff = car.recordsAddedBy(() -> car.clears("FLASHED"));
        assertThat(signOff).hasSize(1);

        car.strikesOut(signOff.get(0), voiding());

        assertThat(theItem(itemId).status()).isEqualTo("CLEARED");
        assertThat(car.openItem().id()).isNotEqualTo(itemId);
        assertThat(car.openItem().causes()).contains("EVIDENCE_VOIDED");
        car.gate().holdsFor("RETUNE_CLEARED");
    }

    @Test
    void evidenceStruckOutJoinsTheOpenItem() {
        Answer change = car.fits(shop().aPartFor("DOWNPIPE"));

        car.strikesOut(finished.readBack());

        assertThat(car.openItem().id()).isEqualTo(change.field("retuneItemId"));
        assertThat(car.openItem().causes()).containsExactly("PART_CHANGED", "EVIDENCE_VOIDED");
    }

    @Test
    void aVoidingThatLeavesTheCarUnmatchedOpensAnItem() {
        car.strikesOut(finished.install());

        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
        assertThat(car.openItem().causes()).containsExactly("VOIDING_LEFT_UNMATCHED");
        car.gate().holdsFor("PARTS_COVERED", "RETUNE_CLEARED");
    }

    @Test
    void aVoidingCanItselfBeStruckOut() {
        Answer install = car.fits(shop().aPartFor("DOWNPIPE"));
        String firstItem = car.openItem().id();
        List<String> added = car.recordsAddedBy(() -> car.strikesOut(install));
        String voidingId = added.get(0);

        car.strikesOut(voidingId, voiding());

        assertThat(car.stateOf("DOWNPIPE")).isEqualTo("PART");
        assertThat(isMarkedVoided(car.record(install.id()).orElseThrow())).isFalse();
        assertThat(isMarkedVoided(car.record(voidingId).orElseThrow())).isTrue();
        assertThat(theItem(firstItem).status()).isEqualTo("CLEARED");
        assertThat(car.openItem().id()).isNotEqualTo(firstItem);
        car.gate().holdsFor("PARTS_COVERED", "RETUNE_CLEARED");
    }

    private void evidenceIsMissingSince(String closedItem, String check) {
        assertThat(theItem(closedItem).status()).isEqualTo("CLEARED");
        assertThat(car.openItem().id()).isNotEqualTo(closedItem);
        assertThat(car.openItem().causes()).contains("EVIDENCE_VOIDED");
        car.gate().holdsFor(check, "RETUNE_CLEARED");
        car.asksToLeave().isHeld();
    }

    private RetuneItem theOnlyItem() {
        assertThat(car.items()).hasSize(1);
        return car.items().get(0);
    }

    private RetuneItem theItem(String id) {
        return car.items().stream()
                .filter(item -> item.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static boolean isMarkedVoided(JsonNode record) {
        return record.path("voided").asBoolean(false);
    }
}
