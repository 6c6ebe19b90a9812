package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.CALIBRATOR;
import static org.bayhold.buildsheet.CarFixture.MANAGER;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.Fact.ClearanceBasis.FLASHED;
import static org.bayhold.buildsheet.Fact.ClearanceBasis.STILL_COVERED;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;
import static org.bayhold.buildsheet.RevisionFixture.stock;

import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarFixture;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.MadeCar;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;

/** docs/rules.md, rule 4: an item is cleared on evidence, on one of two bases; and rule 10 on cars as registered. */
class EvidenceTest {
    private static final UUID INTAKE = part("intake");
    private static final Revision WITH_INTAKE =
            aRevision("intake").covering(Category.AIR_INTAKE, INTAKE).made();
    private static final Reading AS_MADE = new Reading("FACTORY-1", "0A0B0C0D", null);
    private static final Policy NOTHING_ASKED = new Policy(false, 24, true, false, false, false);
    private static final Policy SECOND_PERSON = new Policy(true, 24, true, false, true, true);

    private static CarFixture flashed() {
        return aCar().fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T08:00:00Z")
                .flashedWith(WITH_INTAKE)
                .at("2026-02-02T09:00:00Z");
    }

    @Test
    void aFlashAfterTheLastChangeAndAReadBackAfterItAreEnough() {
        assertThat(missing(flashed().readBack(WITH_INTAKE).at("2026-02-02T09:10:00Z"), FLASHED))
                .isEmpty();
    }

    @Test
    void withoutAReadBackItIsNot() {
        assertThat(missing(flashed(), FLASHED)).containsExactly(Reason.READ_BACK_MISSING);
        assertThat(missing(flashed(), FLASHED, NOTHING_ASKED, MANAGER)).isEmpty();
    }

    @Test
    void aReadBackAtTheTimeOfTheFlashProvesNothing() {
        assertThat(missing(flashed().readBack(WITH_INTAKE).at("2026-02-02T09:00:00Z"), FLASHED))
                .containsExactly(Reason.READ_BACK_MISSING);
    }

    @Test
    void aChangeAtTheTimeOfTheFlashCountsAgainstRelease() {
        CarFixture car = flashed()
                .fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T09:00:00Z")
                .readBack(WITH_INTAKE)
                .at("2026-02-02T09:10:00Z");

        assertThat(missing(car, FLASHED)).containsExactly(Reason.CHANGED_SINCE);
    }

    @Test
    void aFlashThatDoesNotCoverTheSheetClearsNothing() {
        Revision stock = stock("stock");
        CarFixture car = aCar().fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T08:00:00Z")
                .flashedWith(stock)
                .at("2026-02-02T09:00:00Z")
                .readBack(stock)
                .at("2026-02-02T09:10:00Z");

        assertThat(missing(car, FLASHED)).containsExactly(Reason.NOT_COVERED);
    }

    @Test
    void whereAskedWhoFlashedDoesNotSign() {
        CarFixture car = flashed().readBack(WITH_INTAKE).at("2026-02-02T09:10:00Z");

        assertThat(missing(car, FLASHED, SECOND_PERSON, CALIBRATOR)).containsExactly(Reason.SAME_PERSON);
        assertThat(missing(car, FLASHED, SECOND_PERSON, MANAGER)).isEmpty();
    }

    @Test
    void theSamePartAgainIsStillCoveredOnceItIsReadBackAfterTheChange() {
        CarFixture replaced = flashed()
                .readBack(WITH_INTAKE)
                .at("2026-02-02T09:10:00Z")
                .fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T10:00:00Z");

        assertThat(missing(replaced, STILL_COVERED)).containsExactly(Reason.READ_BACK_BEFORE_CHANGE);
        assertThat(missing(replaced.readBack(WITH_INTAKE).at("2026-02-02T10:10:00Z"), STILL_COVERED))
                .isEmpty();
    }

    @Test
    void anotherPartIsNotStillCovered() {
        CarFixture car = flashed()
                .fitted(Category.AIR_INTAKE, part("another"))
                .at("2026-02-02T10:00:00Z")
                .readBack(WITH_INTAKE)
                .at("2026-02-02T10:10:00Z");

        assertThat(missing(car, STILL_COVERED)).containsExactly(Reason.NOT_COVERED);
    }

    @Test
    void theStockPartPutBackOnACarNeverFlashedNeedsAReadBackWhateverPolicySays() {
        CarFixture back = aCar().registeredWith(AS_MADE)
                .fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T08:00:00Z")
                .putBackToStock(Category.AIR_INTAKE)
                .at("2026-02-02T09:00:00Z");

        assertThat(missing(back, STILL_COVERED, NOTHING_ASKED, MANAGER)).containsExactly(Reason.READ_BACK_MISSING);
        assertThat(missing(back, FLASHED)).contains(Reason.NEVER_FLASHED);
        assertThat(missing(back.readBack(AS_MADE).at("2026-02-02T09:10:00Z"), STILL_COVERED))
                .isEmpty();
    }

    @Test
    void aRevisionFoundByAReadBackIsItsOwnEvidence() {
        Revision stock = stock("stock");
        CarFixture found = aCarOfUnknownPast()
                .knowing(stock)
                .foundStockThroughout()
                .at("2026-02-02T08:00:00Z")
                .readBack(stock)
                .at("2026-02-02T08:10:00Z");

        assertThat(missing(found, STILL_COVERED)).isEmpty();
        assertThat(missing(found, FLASHED)).containsExactly(Reason.NEVER_FLASHED);
    }

    @Test
    void aSignOffNamesTheFlashAndTheReadBackThatItRestsOn() {
        CarFixture car = flashed();
        UUID flash = car.lastId();
        MadeCar made = car.readBack(WITH_INTAKE).at("2026-02-02T09:10:00Z").made();
        Question question = GateTest.question(made, Policy.DEFAULT);

        assertThat(Evidence.records(question.car(), Evidence.of(question, FLASHED, MANAGER)))
                .containsExactly(flash, car.lastId());
    }

    private static List<Reason> missing(CarFixture car, Fact.ClearanceBasis basis) {
        return missing(car, basis, Policy.DEFAULT, MANAGER);
    }

    private static List<Reason> missing(CarFixture car, Fact.ClearanceBasis basis, Policy policy, UUID signer) {
        return Evidence.of(GateTest.question(car.made(), policy), basis, signer).stream()
                .filter(CheckResult::failed)
                .map(CheckResult::reason)
                .toList();
    }
}
