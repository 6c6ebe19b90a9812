package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;
import static org.bayhold.buildsheet.RevisionFixture.stock;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarFixture;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.MadeCar;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Correction;
import org.bayhold.obd.Reading;
import org.bayhold.prediction.Risk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The decision table of docs/rules.md, "Gate checks", on the bare functions. */
class GateTest {
    private static final UUID INTAKE = part("intake");
    private static final UUID ITEM = new UUID(7, 7);
    private static final Revision WITH_INTAKE =
            aRevision("intake").covering(Category.AIR_INTAKE, INTAKE).made();
    private static final String NOW = "2026-02-02T10:00:00Z";

    /** P pass, F fail, - not required, in the order of the checks. */
    static Stream<Arguments> situations() {
        return Stream.of(
                arguments("as its maker left it", aCar(), "PPP-P---P-"),
                arguments("a part fitted, never flashed", install(), "PFFFFF--PF"),
                arguments("its item open", install().openedFor(Cause.Code.PART_CHANGED, ITEM), "PFFFFF--FF"),
                arguments("flashed for it", flashed(), "PPPPPF--PF"),
                arguments("and read back", readBack(), "PPPPPP--PF"),
                arguments("and acknowledged", finished(), "PPPPPP--PP"),
                arguments(
                        "another part since",
                        finished().fitted(Category.DOWNPIPE, part("pipe")).at(NOW),
                        "PPFPFP--PP"),
                arguments(
                        "the same part again since",
                        finished().fitted(Category.AIR_INTAKE, INTAKE).at(NOW),
                        "PPFPPP--PP"),
                arguments(
                        "adjusted since",
                        finished().adjusted(Category.WASTEGATE).at(NOW),
                        "PPFPPP--PP"),
                arguments(
                        "a part that nobody could name",
                        finished().fittedSomethingUnknown(Category.INJECTORS).at(NOW),
                        "FPFPFP--PP"),
                arguments(
                        "a failed flash", finished().failedToFlash(WITH_INTAKE).at(NOW), "PFPFFF--PP"),
                arguments(
                        "a file that is not ours", finished().flashedByOthers().at(NOW), "PPPFFF--PP"),
                arguments("a revision for the factory part", flashedWith(stock("stock")), "PPPPFP--PP"),
                arguments("a revision that was withdrawn", flashedWith(withdrawn()), "PPPFPP--PP"),
                arguments("a revision for the way to the dynamometer", flashedWith(transfer()), "PPPFPP--PP"),
                arguments(
                        "another CVN read back",
                        finished()
                                .readBack(new Reading("CAL-intake", "OTHER", null))
                                .at(NOW),
                        "PPPPPF--PP"),
                arguments(
                        "handed over since",
                        finished().handedOver().at(NOW).arrived().at("2026-02-02T10:05:00Z"),
                        "PPPPPP--PF"),
                arguments(
                        "another ECU since",
                        finished().fittedEcu(part("ecu"), "HW-2").at(NOW),
                        "PFFFFF--PP"),
                arguments("of unknown past", aCarOfUnknownPast(), "FFPFFF--PF"));
    }

    private static CarFixture install() {
        return aCar().fitted(Category.AIR_INTAKE, INTAKE).at("2026-02-02T08:00:00Z");
    }

    private static CarFixture flashed() {
        return install().flashedWith(WITH_INTAKE).at("2026-02-02T09:00:00Z");
    }

    private static CarFixture readBack() {
        return flashed().readBack(WITH_INTAKE).at("2026-02-02T09:10:00Z");
    }

    private static CarFixture finished() {
        return readBack().acknowledged().at("2026-02-02T09:20:00Z");
    }

    private static CarFixture flashedWith(Revision revision) {
        return install()
                .flashedWith(revision)
                .at("2026-02-02T09:00:00Z")
                .readBack(revision)
                .at("2026-02-02T09:10:00Z")
                .acknowledged()
                .at("2026-02-02T09:20:00Z");
    }

    private static Revision withdrawn() {
        return aRevision("withdrawn")
                .covering(Category.AIR_INTAKE, INTAKE)
                .withdrawnAt("2026-02-02T09:15:00Z")
                .made();
    }

    private static Revision transfer() {
        return aRevision("transfer")
                .covering(Category.AIR_INTAKE, INTAKE)
                .forA(Purpose.TRANSFER)
                .made();
    }

    @ParameterizedTest(name = "{0}: {2}")
    @MethodSource("situations")
    void eachCheckAnswersOfItsOwn(String situation, CarFixture car, String outcomes) {
        Decision decision = Gate.decide(question(car.made(), Policy.DEFAULT));

        assertThat(letters(decision)).as(situation).isEqualTo(outcomes);
        assertThat(decision.isClear()).isEqualTo(!outcomes.contains("F"));
        assertThat(decision.risk() == null).isEqualTo(decision.isClear());
    }

    @ParameterizedTest
    @EnumSource(
            value = Check.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"SECOND_PERSON_SIGNED"})
    void aCheckThatThrowsHoldsTheCar(Check broken) {
        List<Checks.Named> checks = new ArrayList<>();
        for (Checks.Named check : Checks.ALL) {
            checks.add(
                    check.code() != broken
                            ? check
                            : new Checks.Named(broken, question -> {
                                throw new IllegalStateException("on purpose");
                            }));
        }

        Decision decision = Gate.decide(question(finished().made(), Policy.DEFAULT), Gate.RULES, checks);

        assertThat(decision.isClear()).isFalse();
        assertThat(decision.failed()).containsExactly(CheckResult.fail(broken, Reason.CHECK_DID_NOT_RUN));
    }

    @Test
    void anEcuCheckGrowsTooOld() {
        MadeCar car = finished().made();

        assertThat(at(car, "2026-02-03T09:10:00Z", Policy.DEFAULT).isClear()).isTrue();
        assertThat(at(car, "2026-02-03T09:10:00.000001Z", Policy.DEFAULT).failed())
                .extracting(CheckResult::reason)
                .containsExactly(Reason.READ_BACK_TOO_OLD);
    }

    @Test
    void aShopMayAskForLess() {
        Policy nothing = new Policy(false, 24, false, false, false, false);

        assertThat(letters(Gate.decide(question(flashed().made(), nothing)))).isEqualTo("PPPPP---P-");
    }

    @Test
    void anEcuCheckThatDiffersHoldsEvenWhereNoneIsAskedFor() {
        Policy nothing = new Policy(false, 24, false, false, false, false);
        MadeCar car = finished()
                .readBack(new Reading("OTHER", "CVN-intake", null))
                .at(NOW)
                .made();

        assertThat(letters(Gate.decide(question(car, nothing)))).isEqualTo("PPPPPF--P-");
    }

    @Test
    void aCorrectedPartHoldsTheCarBeforeItsItemIsOpened() {
        MadeCar car = finished().made();
        Correction correction = new Correction(new UUID(9, 9), INTAKE, Instant.parse(NOW));
        Question question = new Question(car.state(), Policy.DEFAULT, car.groups(), List.of(correction));

        assertThat(Gate.decide(question).failed())
                .containsExactly(CheckResult.fail(Check.RETUNE_CLEARED, Reason.PART_SPEC_CORRECTED, correction.id()));
    }

    @Test
    void aSignOffAsStillCoveredAnswersForTheChangesThatItKnew() {
        CarFixture replaced = finished()
                .fitted(Category.AIR_INTAKE, INTAKE)
                .at("2026-02-02T10:00:00Z")
                .openedFor(Cause.Code.PART_CHANGED, ITEM)
                .readBack(WITH_INTAKE)
                .at("2026-02-02T10:10:00Z")
                .signedOff(ITEM, Fact.ClearanceBasis.STILL_COVERED)
                .at("2026-02-02T10:20:00Z");

        assertThat(letters(Gate.decide(question(replaced.made(), Policy.DEFAULT))))
                .isEqualTo("PPPPPP--PP");

        CarFixture late = replaced.fitted(Category.AIR_INTAKE, INTAKE).at("2026-02-02T10:05:00Z");
        assertThat(letters(Gate.decide(question(late.made(), Policy.DEFAULT)))).isEqualTo("PPFPPP--PP");
    }

    @Test
    void theRiskIsThatOfTheWorstPlace() {
        assertThat(risk(aCar().fitted(Category.TRANSMISSION, part("box")))).isEqualTo(Risk.LOW);
        assertThat(risk(aCar().fitted(Category.EXHAUST_REAR, part("rear")))).isEqualTo(Risk.MODERATE);
        assertThat(risk(install())).isEqualTo(Risk.HIGH);
        assertThat(risk(aCar().fittedSomethingUnknown(Category.FUEL))).isEqualTo(Risk.EXTREME);
        assertThat(risk(aCarOfUnknownPast())).isEqualTo(Risk.EXTREME);
        assertThat(risk(readBack())).isEqualTo(Risk.LOW);
    }

    private static Risk risk(CarFixture car) {
        return Gate.decide(question(car.made(), Policy.DEFAULT)).risk();
    }

    private static Decision at(MadeCar car, String effectiveAt, Policy policy) {
        CarState state = car.stateAt(effectiveAt, effectiveAt);
        return Gate.decide(new Question(state, policy, car.groups(), List.of()));
    }

    static Question question(MadeCar car, Policy policy) {
        return new Question(car.state(), policy, car.groups(), List.of());
    }

    private static String letters(Decision decision) {
        StringBuilder letters = new StringBuilder();
        decision.checks()
                .forEach(check -> letters.append(
                        switch (check.outcome()) {
                            case PASS -> 'P';
                            case FAIL -> 'F';
                            case NOT_REQUIRED -> '-';
                        }));
        return letters.toString();
    }
}
