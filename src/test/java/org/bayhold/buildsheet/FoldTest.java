package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.catalog.Category.AIR_INTAKE;
import static org.bayhold.catalog.Category.COSMETIC;
import static org.bayhold.catalog.Category.INJECTORS;
import static org.bayhold.catalog.Category.TURBOCHARGER;
import static org.bayhold.catalog.Category.WASTEGATE;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;

/** Parts, changes and times: docs/rules.md, rules 1 and 7 to 10. */
class FoldTest {
    private static final UUID LARGER = part("larger intake");
    private static final UUID LARGEST = part("largest intake");
    private static final String MORNING = "2026-03-01T08:00:00Z";
    private static final String NOON = "2026-03-01T12:00:00Z";
    private static final String EVENING = "2026-03-01T18:00:00Z";

    @Test
    void aFactoryCarIsFactoryThroughout() {
        CarState car = aCar().made().state();

        assertThat(car.isFactoryThroughout()).isTrue();
        assertThat(car.neverFlashed()).isTrue();
        assertThat(car.changes()).isEmpty();
        assertThat(car.inEcu()).isEqualTo(new InEcu.Factory(Reading.NOTHING));
        assertThat(car.lines()).extracting(BuildLine::since).containsOnlyNulls();
    }

    @Test
    void everyCategoryWithAnEffectHasALineInOrder() {
        CarState car = aCar().made().state();

        assertThat(car.lines())
                .extracting(line -> line.place().category())
                .isSorted()
                .hasSize(36);
        assertThat(car.lines()).extracting(BuildLine::group).doesNotContain(EffectGroup.NO_EFFECT);
    }

    @Test
    void ofAnUnknownPastEveryPlaceIsUnknown() {
        CarState car = aCarOfUnknownPast().made().state();

        assertThat(car.lines()).extracting(BuildLine::fitted).containsOnly(Fitted.UNKNOWN);
        assertThat(car.fittedAt(new Place(INJECTORS, "never named"))).isEqualTo(Fitted.UNKNOWN);
        assertThat(car.inEcu()).isEqualTo(new InEcu.Unknown());
    }

    @Test
    void thePartThatWasFittedLastSitsAtThePlace() {
        MadeCar car = aCar().fitted(AIR_INTAKE, LARGER)
                .fitted(AIR_INTAKE, LARGEST)
                .at(NOON)
                .made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.part(LARGEST));
        assertThat(line(car, AIR_INTAKE).since()).isEqualTo(NOON);
        assertThat(car.state().changes()).hasSize(2);
        assertThat(car.state().isFactoryThroughout()).isFalse();
    }

    @Test
    void theSamePartAgainIsAChange() {
        MadeCar car =
                aCar().fitted(AIR_INTAKE, LARGER).fitted(AIR_INTAKE, LARGER).made();

        assertThat(car.state().changes()).hasSize(2);
    }

    @Test
    void theStockPartPutBackIsStillAChange() {
        MadeCar car = aCar().putBackToStock(AIR_INTAKE).at(NOON).made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.FACTORY);
        assertThat(car.state().changes())
                .extracting(CarState.Change::effectiveAt)
                .containsExactly(Instant.parse(NOON));
    }

    @Test
    void aRemovalLeavesThePlaceEmpty() {
        assertThat(aCar().removed(AIR_INTAKE).made().at(AIR_INTAKE)).isEqualTo(Fitted.NONE);
    }

    @Test
    void anAdjustmentIsAChangeAndLeavesThePartSinceWhenItSits() {
        MadeCar car = aCar().fitted(WASTEGATE, LARGER)
                .at(MORNING)
                .adjusted(WASTEGATE)
                .at(NOON)
                .made();

        assertThat(car.state().changes()).hasSize(2);
        assertThat(car.at(WASTEGATE)).isEqualTo(Fitted.part(LARGER));
        assertThat(line(car, WASTEGATE).since()).isEqualTo(MORNING);
    }

    @Test
    void aPartNotIdentifiedMakesItsPlaceUnknown() {
        MadeCar car = aCar().fittedSomethingUnknown(AIR_INTAKE).made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.UNKNOWN);
        assertThat(car.state().changes()).hasSize(1);
    }

    @Test
    void whatTheCustomerReportsIsAChangeToo() {
        assertThat(aCar().fitted(AIR_INTAKE, LARGER).asReported().made().state().changes())
                .hasSize(1);
    }

    @Test
    void aPartWithoutEffectIsOnTheSheetAndNoChange() {
        MadeCar car = aCar().fitted(COSMETIC, part("strut brace")).made();

        assertThat(car.at(COSMETIC)).isEqualTo(Fitted.part(part("strut brace")));
        assertThat(car.state().changes()).isEmpty();
        assertThat(car.state().isFactoryThroughout()).isTrue();
    }

    @Test
    void aCategoryMovedToNoEffectOpensNothingFromThenOnAndNothingIsForgotten() {
        MadeCar car = aCar().fitted(TURBOCHARGER, LARGER)
                .at(MORNING)
                .arrived()
                .at(EVENING)
                .moved(TURBOCHARGER, true, NOON)
                .made();

        assertThat(car.stateAt(MORNING).changes()).hasSize(1);
        assertThat(car.stateAt(EVENING).changes()).isEmpty();
        assertThat(car.stateAt(MORNING, MORNING).changes()).hasSize(1);
    }

    @Test
    void aCategoryMovedOutOfNoEffectIsUnsortedAndItsPartsAreChanges() {
        MadeCar car = aCar().fitted(COSMETIC, LARGER)
                .at(NOON)
                .moved(COSMETIC, false, MORNING)
                .made();

        assertThat(line(car, COSMETIC).group()).isEqualTo(EffectGroup.UNSORTED);
        assertThat(car.state().changes()).hasSize(1);
    }

    @Test
    void aSecondRailIsAPlaceOfItsOwn() {
        Place secondRail = new Place(INJECTORS, "second rail");
        MadeCar car =
                aCar().fitted(INJECTORS, LARGER).fitted(secondRail, LARGEST).made();

        assertThat(car.at(INJECTORS)).isEqualTo(Fitted.part(LARGER));
        assertThat(car.state().fittedAt(secondRail)).isEqualTo(Fitted.part(LARGEST));
        assertThat(car.state().changes())
                .extracting(CarState.Change::place)
                .containsExactly(Place.of(INJECTORS), secondRail);
    }

    @Test
    void unknownBecomingKnownIsNoChange() {
        MadeCar car = aCarOfUnknownPast()
                .found(AIR_INTAKE, Fitted.part(LARGER))
                .at(NOON)
                .made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.part(LARGER));
        assertThat(line(car, AIR_INTAKE).since()).isEqualTo(NOON);
        assertThat(car.state().changes()).isEmpty();
    }

    @Test
    void anInspectionThatFindsAnotherPartIsAChange() {
        MadeCar car = aCar().found(AIR_INTAKE, Fitted.part(LARGER)).at(NOON).made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.part(LARGER));
        assertThat(car.state().changes())
                .extracting(CarState.Change::effectiveAt)
                .containsExactly(Instant.parse(NOON));
    }

    @Test
    void anInspectionThatConfirmsChangesNothing() {
        CarFixture car = aCar().fitted(AIR_INTAKE, LARGER).at(MORNING);
        UUID fit = car.lastId();
        MadeCar confirmed = car.found(AIR_INTAKE, Fitted.part(LARGER)).at(NOON).made();

        assertThat(line(confirmed, AIR_INTAKE).recordId()).isEqualTo(fit);
        assertThat(confirmed.state().changes()).hasSize(1);
    }

    @Test
    void aLateRecordTurnsAConfirmingInspectionIntoOneThatContradicts() {
        CarFixture car = aCar().found(AIR_INTAKE, Fitted.FACTORY).at(NOON);
        UUID inspection = car.lastId();
        MadeCar late =
                car.fitted(AIR_INTAKE, LARGER).at(MORNING).recordedAt(EVENING).made();

        assertThat(late.stateAt(NOON, NOON).changes()).isEmpty();
        assertThat(late.stateAt(NOON).changes())
                .extracting(CarState.Change::recordId)
                .hasSize(2)
                .endsWith(inspection);
        assertThat(late.at(AIR_INTAKE)).isEqualTo(Fitted.FACTORY);
    }

    @Test
    void whatIsRecordedLateWasNotKnownBefore() {
        MadeCar car = aCar().fitted(AIR_INTAKE, LARGER)
                .at(MORNING)
                .recordedAt(EVENING)
                .made();
        Place intake = Place.of(AIR_INTAKE);

        assertThat(car.stateAt(NOON, NOON).fittedAt(intake)).isEqualTo(Fitted.FACTORY);
        assertThat(car.stateAt(NOON, EVENING).fittedAt(intake)).isEqualTo(Fitted.part(LARGER));
        assertThat(car.stateAt(MORNING, EVENING).fittedAt(intake)).isEqualTo(Fitted.part(LARGER));
        assertThat(car.stateAt("2026-03-01T07:59:59.999999Z", EVENING).fittedAt(intake))
                .isEqualTo(Fitted.FACTORY);
        assertThat(line(car, AIR_INTAKE).knownSince()).isEqualTo(EVENING);
    }

    @Test
    void factsOfOneMomentStandInTheOrderOfRecording() {
        MadeCar car = aCar().fitted(AIR_INTAKE, LARGER)
                .at(NOON)
                .fitted(AIR_INTAKE, LARGEST)
                .at(NOON)
                .made();

        assertThat(car.at(AIR_INTAKE)).isEqualTo(Fitted.part(LARGEST));
        assertThat(car.with(List.of(car.facts().get(1), car.facts().get(0))).state())
                .isEqualTo(car.state());
    }

    @Test
    void aBaselineHoldsFromTheBeginningOfTime() {
        MadeCar car =
                aCar().fitted(AIR_INTAKE, LARGER).at("1999-05-01T00:00:00Z").made();

        assertThat(car.stateAt("1998-01-01T00:00:00Z").isFactoryThroughout()).isTrue();
        assertThat(car.stateAt("2000-01-01T00:00:00Z").fittedAt(Place.of(AIR_INTAKE)))
                .isEqualTo(Fitted.part(LARGER));
    }

    @Test
    void stockPartsFoundThroughoutSayNothingOfTheCalibration() {
        MadeCar car = aCarOfUnknownPast().foundStockThroughout().made();

        assertThat(car.state().lines()).extracting(BuildLine::fitted).containsOnly(Fitted.FACTORY);
        assertThat(car.state().changes()).isEmpty();
        assertThat(car.state().isFactoryThroughout()).isFalse();
    }

    @Test
    void aFactThatCitesAnUnknownRevisionIsRefused() {
        MadeCar car = aCar().flashedWith(RevisionFixture.stock("r1")).made();

        assertThatThrownBy(() -> Fold.at(
                        car.registration(),
                        car.facts(),
                        List.of(),
                        car.groups(),
                        car.lastRecordedAt(),
                        car.lastRecordedAt()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static BuildLine line(MadeCar car, Category category) {
        return car.state().lines().stream()
                .filter(line -> line.place().equals(Place.of(category)))
                .findFirst()
                .orElseThrow();
    }
}
