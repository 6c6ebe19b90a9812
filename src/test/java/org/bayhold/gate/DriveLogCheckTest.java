package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;

import java.util.UUID;
import org.bayhold.buildsheet.CarFixture;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.drivelog.Verdict;
import org.bayhold.prediction.Risk;
import org.junit.jupiter.api.Test;

/** docs/rules.md, "Gate checks": DRIVE_LOG_PASSED, and rules 7, 9 and 10 where they speak of it. */
class DriveLogCheckTest {
    private static final Revision REVISION =
            aRevision("intake").covering(Category.AIR_INTAKE, part("intake")).made();
    private static final Revision OTHER =
            aRevision("other").covering(Category.AIR_INTAKE, part("intake")).made();
    private static final Policy ASKED = new Policy(true, 24, true, true, true, false, null);

    private static CarFixture flashed(Revision revision) {
        return aCar().fitted(Category.AIR_INTAKE, part("intake"))
                .at("2026-02-02T08:00:00Z")
                .flashedWith(revision)
                .at("2026-02-02T09:00:00Z");
    }

    private static CarFixture flashed() {
        return flashed(REVISION);
    }

    private static CheckResult check(CarFixture car) {
        return check(car, ASKED);
    }

    private static CheckResult check(CarFixture car, Policy policy) {
        return DriveLogCheck.passed(GateTest.question(car.made(), policy));
    }

    private static void assertAnswer(CarFixture car, Outcome outcome, Reason reason) {
        CheckResult answer = check(car);
        assertThat(answer.outcome()).as(String.valueOf(answer)).isEqualTo(outcome);
        assertThat(answer.reason()).isEqualTo(reason);
    }

    @Test
    void aDriveAfterTheFlashHasToPass() {
        assertAnswer(flashed(), Outcome.FAIL, Reason.DRIVE_LOG_MISSING);
        assertAnswer(flashed().drove(REVISION, Verdict.PASS), Outcome.PASS, Reason.DRIVE_LOG_PASSES);
        assertAnswer(flashed().drove(REVISION, Verdict.FAIL), Outcome.FAIL, Reason.DRIVE_LOG_FAILED);
        assertAnswer(flashed().drove(REVISION, Verdict.INSUFFICIENT), Outcome.FAIL, Reason.DRIVE_LOG_INSUFFICIENT);
    }

    @Test
    void theRecordIsNamed() {
        CarFixture car = flashed().drove(REVISION, Verdict.PASS);

        assertThat(check(car).records()).containsExactly(car.lastId());
    }

    @Test
    void theNewestThatCameToAVerdictCounts() {
        assertAnswer(
                flashed()
                        .drove(REVISION, Verdict.FAIL)
                        .at("2026-02-02T10:00:00Z")
                        .drove(REVISION, Verdict.PASS)
                        .at("2026-02-02T11:00:00Z")
                        .drove(REVISION, Verdict.INSUFFICIENT),
                Outcome.PASS,
                Reason.DRIVE_LOG_PASSES);
        assertAnswer(
                flashed()
                        .drove(REVISION, Verdict.PASS)
                        .at("2026-02-02T10:00:00Z")
                        .drove(REVISION, Verdict.FAIL),
                Outcome.FAIL,
                Reason.DRIVE_LOG_FAILED);
    }

    @Test
    void ofOneDriveTheLastJudgementCounts() {
        CarFixture worse = flashed()
                .drove(REVISION, Verdict.PASS)
                .at("2026-02-02T10:00:00Z")
                .judgedAgain(Verdict.INSUFFICIENT);

        assertAnswer(worse, Outcome.FAIL, Reason.DRIVE_LOG_INSUFFICIENT);
        assertAnswer(
                flashed()
                        .drove(REVISION, Verdict.FAIL)
                        .at("2026-02-02T10:00:00Z")
                        .judgedAgain(Verdict.PASS),
                Outcome.PASS,
                Reason.DRIVE_LOG_PASSES);
    }

    @Test
    void strikingOutTheDriveTakesItsLaterJudgementsWithIt() {
        CarFixture car = flashed().drove(REVISION, Verdict.FAIL);
        UUID drive = car.lastId();

        car.at("2026-02-02T10:00:00Z").judgedAgain(Verdict.PASS);
        assertThat(check(car).records()).containsExactly(car.lastId(), drive);
        car.at("2026-02-02T11:00:00Z").struckOut(drive);

        assertAnswer(car, Outcome.FAIL, Reason.DRIVE_LOG_MISSING);
    }

    @Test
    void aDriveBeforeTheFlashProvesNothing() {
        CarFixture before = aCar().fitted(Category.AIR_INTAKE, part("intake"))
                .at("2026-02-02T08:00:00Z")
                .drove(null, Verdict.PASS)
                .at("2026-02-02T09:00:00Z")
                .flashedWith(REVISION)
                .at("2026-02-02T10:00:00Z");

        assertAnswer(before, Outcome.FAIL, Reason.DRIVE_LOG_MISSING);
    }

    @Test
    void aTieCountsAgainstRelease() {
        CarFixture passed = flashed().drove(REVISION, Verdict.PASS).at("2026-02-02T09:00:00Z");
        CarFixture failed = flashed().drove(REVISION, Verdict.FAIL).at("2026-02-02T09:00:00Z");

        assertAnswer(passed, Outcome.FAIL, Reason.DRIVE_LOG_MISSING);
        assertAnswer(failed, Outcome.FAIL, Reason.DRIVE_LOG_FAILED);
    }

    @Test
    void aDriveSpeaksForTheCalibrationThatItWasJudgedFor() {
        assertAnswer(flashed().drove(OTHER, Verdict.PASS), Outcome.FAIL, Reason.DRIVE_LOG_OF_ANOTHER);
        assertAnswer(flashed().drove(OTHER, Verdict.FAIL), Outcome.FAIL, Reason.DRIVE_LOG_OF_ANOTHER);
    }

    @Test
    void oneThatFailedHoldsWhateverPolicySays() {
        assertThat(check(flashed(), Policy.DEFAULT).reason()).isEqualTo(Reason.NOT_ASKED_FOR);
        CheckResult failed = check(flashed().drove(REVISION, Verdict.FAIL), Policy.DEFAULT);

        assertThat(failed.outcome()).isEqualTo(Outcome.FAIL);
        assertThat(failed.reason()).isEqualTo(Reason.DRIVE_LOG_FAILED);
    }

    @Test
    void itsRiskIsThatOfTheGate() {
        Decision decision = Gate.decide(
                GateTest.question(flashed().drove(REVISION, Verdict.FAIL).made(), Policy.DEFAULT));

        assertThat(decision.risk()).isEqualTo(Risk.HIGH);
        assertThat(Causes.isUnmatched(decision)).isFalse();
    }

    @Test
    void aFactoryCarIsNotAsked() {
        assertAnswer(aCar(), Outcome.NOT_REQUIRED, Reason.FACTORY_THROUGHOUT);
    }

    @Test
    void compressionIgnitionIsNotAsked() {
        Revision oil = aRevision("oil")
                .covering(Category.AIR_INTAKE, part("intake"))
                .forCompressionIgnition()
                .made();

        assertAnswer(flashed(oil), Outcome.NOT_REQUIRED, Reason.NO_SPARK_IGNITION);
    }

    @Test
    void earlierRulesAskedForNothing() {
        Decision decision = Gate.decide(
                GateTest.question(flashed().drove(REVISION, Verdict.FAIL).made(), ASKED), 2);

        assertThat(decision.fails(Check.DRIVE_LOG_PASSED)).isFalse();
    }

    @Test
    void eachMapForTheFuelInTheTankHasToPass() {
        Revision two = aRevision("two")
                .covering(Category.AIR_INTAKE, part("intake"))
                .withMap("calm")
                .withMap("track")
                .withMap("corn", part("corn spirit"))
                .made();

        assertAnswer(flashed(two).drove(two, "calm", Verdict.PASS), Outcome.FAIL, Reason.DRIVE_LOG_OF_EACH_MAP);
        assertAnswer(
                flashed(two)
                        .drove(two, "calm", Verdict.PASS)
                        .at("2026-02-02T10:00:00Z")
                        .drove(two, "track", Verdict.PASS),
                Outcome.PASS,
                Reason.DRIVE_LOG_PASSES);
        assertAnswer(
                flashed(two)
                        .drove(two, "calm", Verdict.PASS)
                        .at("2026-02-02T10:00:00Z")
                        .drove(two, "track", Verdict.FAIL),
                Outcome.FAIL,
                Reason.DRIVE_LOG_FAILED);
    }

    @Test
    void whereNoMapIsForTheFuelNothingPasses() {
        Revision corn = aRevision("corn")
                .covering(Category.AIR_INTAKE, part("intake"))
                .withMap("corn", part("corn spirit"))
                .made();

        assertAnswer(flashed(corn).drove(corn, "corn", Verdict.PASS), Outcome.FAIL, Reason.DRIVE_LOG_MISSING);
    }
}
