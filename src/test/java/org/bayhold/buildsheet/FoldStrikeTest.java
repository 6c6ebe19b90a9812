package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.catalog.Category.AIR_INTAKE;

import java.util.UUID;
import org.bayhold.buildsheet.Fact.ClearanceBasis;
import org.bayhold.catalog.Place;
import org.junit.jupiter.api.Test;

/** Striking out, retune items, coming and going: docs/rules.md, rules 4, 7 and 8. */
class FoldStrikeTest {
    private static final UUID LARGER = part("larger intake");
    private static final UUID ITEM = new UUID(4, 1);
    private static final UUID NEXT_ITEM = new UUID(4, 2);
    private static final String MORNING = "2026-03-01T08:00:00Z";
    private static final String NOON = "2026-03-01T12:00:00Z";
    private static final String EVENING = "2026-03-01T18:00:00Z";
    private static final String NIGHT = "2026-03-01T23:00:00Z";

    private final CarFixture car = aCar().fitted(AIR_INTAKE, LARGER).at(MORNING);
    private final UUID fit = car.lastId();

    @Test
    void whatIsStruckOutCountsNoMoreFromWhenThatWasRecorded() {
        MadeCar record = car.struckOut(fit).at(NOON).made();

        assertThat(record.state().isFactoryThroughout()).isTrue();
        assertThat(record.stateAt(MORNING).changes()).isEmpty();
        assertThat(record.stateAt(MORNING, MORNING).changes()).hasSize(1);
        assertThat(Fold.voided(record.facts(), record.lastRecordedAt())).containsExactly(fit);
    }

    @Test
    void aStrikingOutThatIsStruckOutStrikesNothing() {
        UUID strike = car.struckOut(fit).at(NOON).lastId();
        UUID strikeOfStrike = car.struckOut(strike).at(EVENING).lastId();

        assertThat(car.made().at(AIR_INTAKE)).isEqualTo(Fitted.part(LARGER));
        assertThat(car.struckOut(strikeOfStrike).at(NIGHT).made().at(AIR_INTAKE))
                .isEqualTo(Fitted.FACTORY);
    }

    @Test
    void strikingOutTheEarlierOfTwoPartsLeavesTheLater() {
        UUID larger = fit;
        car.fitted(AIR_INTAKE, part("largest")).at(NOON);

        assertThat(car.struckOut(larger).made().at(AIR_INTAKE)).isEqualTo(Fitted.part(part("largest")));
    }

    @Test
    void anItemIsOpenFromWhenItsCauseHeld() {
        MadeCar record =
                car.openedFor(Cause.Code.PART_CHANGED, ITEM).at(EVENING).made();

        assertThat(record.stateAt("2026-03-01T07:00:00Z").openItem()).isEmpty();
        assertThat(record.stateAt(NOON).openItem().orElseThrow().id()).isEqualTo(ITEM);
        assertThat(record.stateAt(NOON, NOON).openItem()).isEmpty();
    }

    @Test
    void anItemIsClosedFromWhenItIsSignedOff() {
        MadeCar record = car.openedFor(Cause.Code.PART_CHANGED, ITEM)
                .signedOff(ITEM, ClearanceBasis.FLASHED)
                .at(EVENING)
                .made();

        assertThat(record.stateAt(NOON).openItem()).isPresent();
        assertThat(record.stateAt(EVENING).openItem()).isEmpty();
        assertThat(record.state().clearances()).hasSize(1);
    }

    @Test
    void aClosedItemIsNeverReopened() {
        UUID signature = car.openedFor(Cause.Code.PART_CHANGED, ITEM)
                .signedOff(ITEM, ClearanceBasis.FLASHED)
                .at(EVENING)
                .lastId();
        CarState state = car.struckOut(signature).at(NIGHT).made().state();

        assertThat(state.openItem()).isEmpty();
        assertThat(state.clearances()).isEmpty();
    }

    @Test
    void everyLaterCauseJoinsTheOpenItem() {
        MadeCar record = car.openedFor(Cause.Code.PART_CHANGED, ITEM)
                .removed(AIR_INTAKE)
                .at(NOON)
                .joinedFor(Cause.Code.PART_CHANGED, ITEM)
                .made();

        assertThat(record.state().openItem().orElseThrow().causes())
                .extracting(cause -> cause.effectiveAt().toString())
                .containsExactly(MORNING, NOON);
    }

    @Test
    void anItemHoldsFromTheEarliestCauseThatIsNotStruckOut() {
        MadeCar record = car.openedFor(Cause.Code.PART_CHANGED, ITEM)
                .removed(AIR_INTAKE)
                .at(EVENING)
                .joinedFor(Cause.Code.PART_CHANGED, ITEM)
                .struckOut(fit)
                .made();

        assertThat(record.stateAt(NOON).openItem()).isEmpty();
        assertThat(record.stateAt(EVENING).openItem().orElseThrow().causes()).hasSize(2);
    }

    @Test
    void anItemWithEveryCauseStruckOutWaitsToLapse() {
        car.openedFor(Cause.Code.PART_CHANGED, ITEM).struckOut(fit).at(NOON);

        assertThat(car.made().stateAt(MORNING).openItem()).isPresent();
        assertThat(car.lapsed(ITEM).at(EVENING).made().stateAt(MORNING).openItem())
                .isEmpty();
    }

    @Test
    void ofTwoItemsOpenAtAPastMomentTheNewerIsTold() {
        MadeCar record = car.openedFor(Cause.Code.PART_CHANGED, ITEM)
                .signedOff(ITEM, ClearanceBasis.FLASHED)
                .at(EVENING)
                .removed(AIR_INTAKE)
                .at(NOON)
                .openedFor(Cause.Code.LATE_RECORD, NEXT_ITEM)
                .made();

        assertThat(record.stateAt(NOON).openItem().orElseThrow().id()).isEqualTo(NEXT_ITEM);
        assertThat(record.stateAt(MORNING).openItem().orElseThrow().id()).isEqualTo(ITEM);
    }

    @Test
    void aCarIsInTheShopFromRegistrationUntilItIsHandedOver() {
        assertThat(car.made().state().stay()).isEqualTo(new CarState.Stay(true, null, false));

        CarState.Stay out = car.handedOver().at(NOON).made().state().stay();

        assertThat(out.inShop()).isFalse();
        assertThat(out.since()).isEqualTo(NOON);
    }

    @Test
    void theShopsWorkOnACarThatIsOutImpliesThatItCameIn() {
        CarState.Stay stay = car.handedOver()
                .at(NOON)
                .removed(AIR_INTAKE)
                .at(EVENING)
                .made()
                .state()
                .stay();

        assertThat(stay.inShop()).isTrue();
        assertThat(stay.implied()).isTrue();
        assertThat(stay.since()).isEqualTo(EVENING);
    }

    @Test
    void aTelephoneCallLeavesTheCarOut() {
        CarState state = car.handedOver()
                .at(NOON)
                .removed(AIR_INTAKE)
                .asReported()
                .made()
                .state();

        assertThat(state.stay().inShop()).isFalse();
        assertThat(state.fittedAt(Place.of(AIR_INTAKE))).isEqualTo(Fitted.NONE);
    }

    @Test
    void whatTheShopWouldRefuseIsNoHistory() {
        assertThatThrownBy(() -> car.at(NOON).recordedAt(MORNING).made()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> aCar().struckOut(fit).made()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> aCar().flashedWith(RevisionFixture.aRevision("other")
                                .forEcu("HW-2")
                                .made())
                        .made())
                .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> aCar().signedOff(ITEM, ClearanceBasis.FLASHED).made())
                .isInstanceOf(IllegalStateException.class);
    }
}
