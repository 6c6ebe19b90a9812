package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;
import static org.bayhold.buildsheet.RevisionFixture.stock;
import static org.bayhold.catalog.Category.AIR_FILTER;
import static org.bayhold.catalog.Category.AIR_INTAKE;
import static org.bayhold.catalog.Category.COSMETIC;
import static org.bayhold.catalog.Category.INJECTORS;

import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Coverage.Why;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.junit.jupiter.api.Test;

/** What a revision was written for: docs/rules.md, rule 3. */
class CoverageTest {
    private static final UUID LARGER = part("larger intake");
    private static final UUID EQUAL = part("another maker's, equal to the calibration");
    private static final Place SECOND_RAIL = new Place(INJECTORS, "second rail");

    private static List<Gap> gaps(CarFixture car, Revision revision) {
        MadeCar record = car.made();
        return Coverage.gaps(record.state(), revision, record.groups());
    }

    private static List<Why> why(CarFixture car, Revision revision) {
        return gaps(car, revision).stream().map(Gap::why).toList();
    }

    @Test
    void aCategoryNotNamedMeansFactoryPart() {
        assertThat(gaps(aCar(), stock("r1"))).isEmpty();
        assertThat(why(aCar().fitted(AIR_INTAKE, LARGER), stock("r1"))).containsExactly(Why.PART_NOT_COVERED);
    }

    @Test
    void anyOfTheNamedPartsIsCovered() {
        Revision revision = aRevision("r1").covering(AIR_INTAKE, LARGER, EQUAL).made();

        assertThat(gaps(aCar().fitted(AIR_INTAKE, LARGER), revision)).isEmpty();
        assertThat(gaps(aCar().fitted(AIR_INTAKE, EQUAL), revision)).isEmpty();
        assertThat(why(aCar().fitted(AIR_INTAKE, part("nearly the same")), revision))
                .containsExactly(Why.PART_NOT_COVERED);
    }

    @Test
    void whereAPartIsNamedTheFactoryPartMustBeAllowed() {
        assertThat(why(aCar(), aRevision("r1").covering(AIR_INTAKE, LARGER).made()))
                .containsExactly(Why.FACTORY_NOT_COVERED);
        assertThat(gaps(
                        aCar(),
                        aRevision("r1").coveringOrFactory(AIR_INTAKE, LARGER).made()))
                .isEmpty();
    }

    @Test
    void anEmptyPlaceMustBeAllowed() {
        CarFixture car = aCar().removed(AIR_FILTER);

        assertThat(why(car, stock("r1"))).containsExactly(Why.NONE_NOT_COVERED);
        assertThat(why(car, aRevision("r1").coveringOrFactory(AIR_FILTER).made()))
                .containsExactly(Why.NONE_NOT_COVERED);
        assertThat(gaps(car, aRevision("r1").coveringOrNone(AIR_FILTER).made())).isEmpty();
    }

    @Test
    void unknownIsNeverCovered() {
        assertThat(why(aCar().fittedSomethingUnknown(AIR_INTAKE), stock("r1")))
                .containsExactly(Why.UNKNOWN_NEVER_COVERED);
        assertThat(why(aCarOfUnknownPast(), stock("r1"))).hasSize(36).containsOnly(Why.UNKNOWN_NEVER_COVERED);
        assertThat(gaps(aCarOfUnknownPast().foundStockThroughout(), stock("r1")))
                .isEmpty();
    }

    @Test
    void aPartAtAnotherPositionIsNotCovered() {
        Revision revision = aRevision("r1").coveringOrFactory(INJECTORS, LARGER).made();

        assertThat(gaps(aCar().fitted(SECOND_RAIL, LARGER), revision))
                .extracting(Gap::place)
                .containsExactly(SECOND_RAIL);
    }

    @Test
    void aPlaceThatOnlyTheRevisionNamesMustHoldItsPart() {
        Revision revision = aRevision("r1").covering(SECOND_RAIL, LARGER).made();

        assertThat(gaps(aCar(), revision)).singleElement().satisfies(gap -> {
            assertThat(gap.place()).isEqualTo(SECOND_RAIL);
            assertThat(gap.fitted()).isEqualTo(Fitted.FACTORY);
            assertThat(gap.calibratedFor()).contains(revision.coverage().get(0));
        });
        assertThat(gaps(aCar().fitted(SECOND_RAIL, LARGER), revision)).isEmpty();
    }

    @Test
    void aPlaceWithoutEffectNeedsNoCover() {
        CarFixture car = aCar().fitted(COSMETIC, LARGER);
        assertThat(gaps(car, stock("r1"))).isEmpty();

        CarFixture moved = car.moved(COSMETIC, false, "2026-01-05T08:30:00Z");
        assertThat(gaps(moved, stock("r1"))).extracting(Gap::group).containsExactly(EffectGroup.UNSORTED);
    }

    @Test
    void theGapsToFactoryAreWhateverIsNotFactory() {
        MadeCar car = aCar().fitted(INJECTORS, LARGER).removed(AIR_FILTER).made();

        assertThat(Coverage.gapsToFactory(car.state(), car.groups()))
                .extracting(Gap::place)
                .containsExactly(Place.of(AIR_FILTER), Place.of(INJECTORS));
    }
}
