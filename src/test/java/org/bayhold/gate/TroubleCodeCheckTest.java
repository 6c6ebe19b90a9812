package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;

import java.util.List;
import org.bayhold.buildsheet.CarFixture;
import org.bayhold.buildsheet.Fact;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Risk;
import org.junit.jupiter.api.Test;

/** docs/rules.md, "Gate checks": NO_RELATED_TROUBLE_CODES, and rules 9, 10 and 14 where they speak of it. */
class TroubleCodeCheckTest {
    private static final Revision REVISION =
            aRevision("intake").covering(Category.AIR_INTAKE, part("intake")).made();
    private static final Policy NOT_ASKED = new Policy(true, 24, false, false, true, false);

    private static CarFixture flashed() {
        return aCar().fitted(Category.AIR_INTAKE, part("intake"))
                .at("2026-02-02T08:00:00Z")
                .flashedWith(REVISION)
                .at("2026-02-02T09:00:00Z");
    }

    private static CheckResult check(CarFixture car) {
        return check(car, Policy.DEFAULT);
    }

    private static CheckResult check(CarFixture car, Policy policy) {
        return TroubleCodeCheck.noneRelated(GateTest.question(car.made(), policy));
    }

    private static CheckResult failing(CarFixture car) {
        return CheckResult.fail(Check.NO_RELATED_TROUBLE_CODES, Reason.RELATED_CODES, car.lastId());
    }

    private static CheckResult passing(CarFixture car) {
        return CheckResult.pass(Check.NO_RELATED_TROUBLE_CODES, Reason.NO_RELATED_CODES, car.lastId());
    }

    private static CheckResult notAsked(Reason reason) {
        return CheckResult.notRequired(Check.NO_RELATED_TROUBLE_CODES, reason);
    }

    @Test
    void withoutCodesNothingIsRequired() {
        assertThat(check(flashed())).isEqualTo(notAsked(Reason.CODES_NOT_READ));
        assertThat(check(flashed().readBack(REVISION))).isEqualTo(notAsked(Reason.CODES_NOT_READ));
    }

    @Test
    void aRelatedCodeHoldsTheCarAndNamesTheCheck() {
        CarFixture car = flashed().readBackWithCodes(REVISION, "P0420", "P0171");

        assertThat(check(car)).isEqualTo(failing(car));
        Decision decision = Gate.decide(GateTest.question(car.made(), Policy.DEFAULT));
        assertThat(decision.fails(Check.NO_RELATED_TROUBLE_CODES)).isTrue();
        assertThat(decision.risk()).isEqualTo(Risk.HIGH);
        assertThat(Causes.isUnmatched(decision)).isFalse();
    }

    @Test
    void othersAndNoneDoNot() {
        CarFixture others = flashed().readBackWithCodes(REVISION, "P0420", "P1171", "U0100");
        CarFixture none = flashed().readBackWithCodes(REVISION);

        assertThat(check(others)).isEqualTo(passing(others));
        assertThat(check(none)).isEqualTo(passing(none));
    }

    @Test
    void theNewestThatBroughtCodesCounts() {
        CarFixture mended = flashed().readBackWithCodes(REVISION, "P0171").readBackWithCodes(REVISION);
        assertThat(check(mended)).isEqualTo(passing(mended));

        CarFixture held = flashed().readBackWithCodes(REVISION).readBackWithCodes(REVISION, "P0171");
        CheckResult failed = failing(held);
        assertThat(check(held.readBack(REVISION))).isEqualTo(failed);
    }

    @Test
    void codesFromBeforeTheFlashAreOfAnotherSoftware() {
        CarFixture car = aCar().fitted(Category.AIR_INTAKE, part("intake"))
                .readBackWithCodes(REVISION, "P0171")
                .flashedWith(REVISION);

        assertThat(check(car)).isEqualTo(notAsked(Reason.CODES_NOT_READ));
    }

    @Test
    void atTheVeryTimeOfTheFlashACodeCountsAndItsAbsenceDoesNot() {
        CarFixture fault = flashed().readBackWithCodes(REVISION, "P0171").at("2026-02-02T09:00:00Z");
        CarFixture none = flashed().readBackWithCodes(REVISION).at("2026-02-02T09:00:00Z");
        CarFixture later = flashed()
                .readBackWithCodes(REVISION, "P0171")
                .at("2026-02-02T09:00:00Z")
                .readBackWithCodes(REVISION)
                .at("2026-02-02T09:00:01Z");

        assertThat(check(fault)).isEqualTo(failing(fault));
        assertThat(check(none)).isEqualTo(notAsked(Reason.CODES_NOT_READ));
        assertThat(check(later)).isEqualTo(passing(later));
    }

    @Test
    void theCheckThatFindsARevisionTellsItsCodesToo() {
        CarFixture car = aCarOfUnknownPast().knowing(REVISION).readBackWithCodes(REVISION);

        assertThat(check(car)).isEqualTo(passing(car));
    }

    @Test
    void aCarAsItsMakerLeftItIsHeldByACodeThatWasRead() {
        CarFixture car = aCar().readBackWithCodes(REVISION, "P0299");

        assertThat(check(aCar())).isEqualTo(notAsked(Reason.CODES_NOT_READ));
        assertThat(check(car)).isEqualTo(failing(car));
    }

    @Test
    void wherePolicyDoesNotAskACodeIsOverlooked() {
        assertThat(check(flashed().readBackWithCodes(REVISION, "P0171"), NOT_ASKED))
                .isEqualTo(notAsked(Reason.NOT_ASKED_FOR));
    }

    @Test
    void aStruckOutCheckToldNothing() {
        CarFixture car = flashed().readBackWithCodes(REVISION, "P0171");

        assertThat(check(car.struckOut(car.lastId()))).isEqualTo(notAsked(Reason.CODES_NOT_READ));
    }

    /** A related code holds the handover, not the sign-off: the calibration may be signed off, and the fault mended. */
    @Test
    void aSignOffDoesNotAskForIt() {
        CarFixture car = flashed().readBackWithCodes(REVISION, "P0171");

        assertThat(Evidence.of(
                        GateTest.question(car.made(), Policy.DEFAULT), Fact.ClearanceBasis.FLASHED, CarFixture.MANAGER))
                .noneMatch(CheckResult::failed)
                .extracting(CheckResult::code)
                .doesNotContain(Check.NO_RELATED_TROUBLE_CODES);
    }

    /** Rule 14. */
    @Test
    void theFirstVersionOfTheRulesKnowsNothingOfCodes() {
        Question question = GateTest.question(
                flashed().readBackWithCodes(REVISION, "P0171").acknowledged().made(), Policy.DEFAULT);

        Decision first = Gate.decide(question, 1);
        Decision now = Gate.decide(question);

        assertThat(first.rules()).isEqualTo(1);
        assertThat(first.isClear()).isTrue();
        assertThat(first.checks())
                .extracting(CheckResult::code)
                .containsExactly(
                        Check.PARTS_KNOWN,
                        Check.FLASH_COMPLETED,
                        Check.FLASH_AFTER_LAST_CHANGE,
                        Check.CALIBRATION_IN_FORCE,
                        Check.PARTS_COVERED,
                        Check.READ_BACK_MATCHES,
                        Check.DRIVE_LOG_PASSED,
                        Check.RETUNE_CLEARED,
                        Check.CUSTOMER_ACKNOWLEDGED);
        assertThat(now.rules()).isEqualTo(Gate.RULES);
        assertThat(now.isClear()).isFalse();
        assertThat(now.checks()).hasSize(first.checks().size() + 1);
        assertThat(Checks.of(Gate.RULES)).isEqualTo(List.copyOf(Checks.ALL));
    }
}
