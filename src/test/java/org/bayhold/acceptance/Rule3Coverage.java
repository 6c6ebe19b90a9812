package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.fitUnidentified;
import static org.bayhold.support.Facts.refitFactory;
import static org.bayhold.support.Facts.remove;

import java.util.List;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 3: what a revision covers. */
public abstract class Rule3Coverage implements OnADatabase {

    @Test
    void thePartThatTheRevisionNamesIsCovered() {
        Part intake = shop().aPartFor("AIR_INTAKE");
        Car car = shop().registers(aCar());
        car.fits(intake);
        covered(car, RevisionDraft.forThe(car).covers(intake));
    }

    @Test
    void everyPartOfAListOfEqualsIsCovered() {
        Part one = shop().aPartFor("AIR_INTAKE");
        Part other = shop().aPartFor("AIR_INTAKE");
        for (Part fitted : List.of(one, other)) {
            Car car = shop().registers(aCar());
            car.fits(fitted);
            covered(car, RevisionDraft.forThe(car).covers(one, other));
        }
    }

    @Test
    void anotherPartOfTheSameKindIsNotCovered() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));
        notCovered(car, RevisionDraft.forThe(car).covers(shop().aPartFor("AIR_INTAKE")), "AIR_INTAKE");
    }

    @Test
    void aCategoryThatIsNotNamedMeansTheFactoryPart() {
        Part intake = shop().aPartFor("AIR_INTAKE");
        Car car = shop().registers(aCar());
        car.fits(intake);
        car.fits(shop().aPartFor("DOWNPIPE"));
        notCovered(car, RevisionDraft.forThe(car).covers(intake), "DOWNPIPE");
    }

    @Test
    void theFactoryPartIsNotCoveredWhereTheRevisionNamesAnother() {
        Car car = shop().registers(aCar());
        car.changes(refitFactory("AIR_INTAKE"));
        notCovered(car, RevisionDraft.forThe(car).covers(shop().aPartFor("AIR_INTAKE")), "AIR_INTAKE");
    }

    @Test
    void theFactoryPartIsCoveredWhereTheRevisionAllowsIt() {
        Car car = shop().registers(aCar());
        car.changes(refitFactory("AIR_INTAKE"));
        covered(car, RevisionDraft.forThe(car).coversOrFactory(shop().aPartFor("AIR_INTAKE")));
    }

    @Test
    void anEmptyPlaceIsNotCovered() {
        Car car = shop().registers(aCar());
        car.changes(remove("EMISSIONS_EQUIPMENT"));
        assertThat(car.stateOf("EMISSIONS_EQUIPMENT")).isEqualTo("NONE");
        notCovered(car, RevisionDraft.forThe(car), "EMISSIONS_EQUIPMENT");
    }

    @Test
    void anEmptyPlaceIsNotCoveredByTheFactoryPartBeingAllowed() {
        Car car = shop().registers(aCar());
        car.changes(remove("AIR_FILTER"));
        notCovered(car, RevisionDraft.forThe(car).coversOrFactory(shop().aPartFor("AIR_FILTER")), "AIR_FILTER");
    }

    @Test
    void anEmptyPlaceIsCoveredOnlyWhereTheRevisionAllowsIt() {
        Car car = shop().registers(aCar());
        car.changes(remove("AIR_FILTER"));
        covered(car, RevisionDraft.forThe(car).coversOrNone(shop().aPartFor("AIR_FILTER")));
    }

    @Test
    void anUnknownPartIsNeverCovered() {
        Car car = shop().registers(aCar());
        car.changes(fitUnidentified("AIR_INTAKE"));
        Body everything = Body.of("category", "AIR_INTAKE")
                .with("partSpecIds", List.of(shop().aPartFor("AIR_INTAKE").id()))
                .with("factoryAllowed", true)
                .with("noneAllowed", true);
        notCovered(car, RevisionDraft.forThe(car).coversLine(everything), "AIR_INTAKE");
        car.gate().holdsFor("PARTS_KNOWN");
    }

    @Test
    void aPlaceIsCoveredByItsOwnPositionOnly() {
        Part injectors = shop().aPartFor("INJECTORS");
        Body secondRail = Body.of("category", "INJECTORS")
                .with("position", "second rail")
                .with("partSpecIds", List.of(injectors.id()));

        Car car = shop().registers(aCar());
        car.changes(fit(injectors).with("position", "second rail"));
        covered(car, RevisionDraft.forThe(car).coversLine(secondRail));

        Car elsewhere = shop().registers(aCar());
        elsewhere.fits(injectors);
        notCovered(elsewhere, RevisionDraft.forThe(elsewhere).coversLine(secondRail), "INJECTORS");
    }

    @Test
    void aPartWithoutAnEffectNeedsNoCoverage() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("COSMETIC"));
        covered(car, RevisionDraft.forThe(car));
    }

    private void covered(Car car, RevisionDraft revision) {
        car.flashes(shop().issues(revision));
        assertThat(car.gate().outcome("PARTS_COVERED")).isEqualTo("PASS");
        assertThat(car.gate().mismatches()).isEmpty();
    }

    private void notCovered(Car car, RevisionDraft revision, String place) {
        car.flashes(shop().issues(revision));
        car.gate().holdsFor("PARTS_COVERED");
        assertThat(car.gate().mismatchedPlaces()).containsOnly(place);
        car.asksToClear("FLASHED").lacksEvidenceFor("PARTS_COVERED");
    }
}
