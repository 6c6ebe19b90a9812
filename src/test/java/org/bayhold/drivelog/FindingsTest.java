package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.bayhold.drivelog.EngineFacts.ExpectedScale;
import org.bayhold.drivelog.EngineFacts.Injectors;
import org.bayhold.drivelog.Finding.Code;
import org.bayhold.drivelog.Fit.Agreement;
import org.bayhold.prediction.Risk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is wrong with a made engine is found, and nothing else. docs/drive-log.md, D13. */
class FindingsTest {
    private static final EngineFacts RESET = EngineFacts.UNKNOWN.withAdaptationsReset(true);

    private record Case(Code code, Risk risk, UnaryOperator<MadeDrive> wrong, EngineFacts facts, List<Code> alongside) {
        static Case of(Code code, Risk risk, UnaryOperator<MadeDrive> wrong, Code... alongside) {
            return new Case(code, risk, wrong, RESET, List.of(alongside));
        }

        Case with(EngineFacts known) {
            return new Case(code, risk, wrong, known, alongside);
        }

        @Override
        public String toString() {
            return code + " " + risk;
        }
    }

    static Stream<Case> cases() {
        return Stream.of(
                Case.of(Code.SCALE_ERROR, Risk.MODERATE, made -> made.withScale(8), Code.BEYOND_NORMAL_CORRECTION),
                Case.of(Code.SCALE_ERROR, Risk.HIGH, made -> made.withScale(-15), Code.BEYOND_NORMAL_CORRECTION),
                Case.of(Code.SCALE_ERROR, Risk.EXTREME, made -> made.withScale(13), Code.BEYOND_NORMAL_CORRECTION),
                Case.of(
                        Code.AIR_LEAK_PATTERN,
                        Risk.EXTREME,
                        made -> made.withOffset(0.6),
                        Code.BEYOND_NORMAL_CORRECTION),
                Case.of(
                        Code.TRIM_AT_LIMIT,
                        Risk.HIGH,
                        made -> made.withScale(45),
                        Code.BEYOND_NORMAL_CORRECTION,
                        Code.SCALE_ERROR,
                        Code.LEAN_AT_FULL_LOAD),
                Case.of(Code.BANK_DIFFERENCE, Risk.MODERATE, made -> made.withBankDifference(9)),
                Case.of(
                        Code.DELIVERY_LIMIT,
                        Risk.HIGH,
                        made -> made.withPumpLimit(40),
                        Code.LEAN_AT_FULL_LOAD,
                        Code.TRIM_AT_LIMIT),
                Case.of(Code.LEAN_AT_FULL_LOAD, Risk.HIGH, made -> made.withFullLoadError(6)),
                Case.of(Code.LEAN_AT_FULL_LOAD, Risk.EXTREME, made -> made.withFullLoadError(13)),
                Case.of(Code.RICH_AT_FULL_LOAD, Risk.MODERATE, made -> made.withFullLoadError(-7)),
                Case.of(Code.RICH_AT_FULL_LOAD, Risk.HIGH, made -> made.withFullLoadError(-15)),
                Case.of(Code.OVERBOOST, Risk.HIGH, made -> made.withBoost(194)).with(RESET.withBoostTargetKpa(180)),
                Case.of(Code.OVERBOOST, Risk.EXTREME, made -> made.withBoost(205))
                        .with(RESET.withBoostTargetKpa(180)),
                Case.of(Code.UNDERBOOST, Risk.MODERATE, made -> made.withBoost(160))
                        .with(RESET.withBoostTargetKpa(180)),
                Case.of(Code.KNOCK_RETARD, Risk.HIGH, made -> made.withKnock(5.5)),
                Case.of(Code.KNOCK_RETARD, Risk.EXTREME, made -> made.withKnock(-9)),
                Case.of(Code.METER_SATURATED, Risk.HIGH, made -> made.withMeterCeiling(90), Code.LEAN_AT_FULL_LOAD),
                Case.of(Code.METER_SATURATED, Risk.HIGH, made -> made).with(RESET.withAirflowCeilingGPerS(100)),
                Case.of(Code.LEARNED_BEFORE_FLASH, Risk.LOW, made -> made.withLearned(6))
                        .with(EngineFacts.UNKNOWN));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void whatIsWrongIsFoundAndNothingElse(Case wrong) {
        Judgement judgement = Fed.judge(wrong.wrong().apply(new MadeDrive(11)), wrong.facts());

        Finding finding = judgement.findings().stream()
                .filter(found -> found.code() == wrong.code())
                .findFirst()
                .orElseThrow(() -> new AssertionError(judgement.findings().toString()));
        assertThat(finding.risk()).as("%s", finding).isEqualTo(wrong.risk());
        assertThat(finding.numbers()).isNotEmpty();
        assertThat(finding.rows())
                .isNotEmpty()
                .allSatisfy(rows -> assertThat(rows.first())
                        .isPositive()
                        .isLessThanOrEqualTo(rows.last())
                        .isLessThanOrEqualTo(judgement.quality().moments()));
        assertThat(judgement.findings().stream()
                        .map(Finding::code)
                        .filter(code -> code != wrong.code() && code != Code.WITHIN_NORMAL_CORRECTION))
                .as("%s", judgement.findings())
                .containsOnlyOnceElementsOf(wrong.alongside())
                .hasSize(wrong.alongside().size());
        boolean onlyTells = wrong.code() == Code.LEARNED_BEFORE_FLASH;
        assertThat(judgement.verdict()).isEqualTo(onlyTells ? Verdict.PASS : Verdict.FAIL);
    }

    @Test
    void aSoundEnginePasses() {
        Judgement judgement = Fed.judge(new MadeDrive(3), RESET);

        assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
        assertThat(judgement.missing()).isEmpty();
        assertThat(judgement.findings().stream().map(Finding::code)).containsExactly(Code.WITHIN_NORMAL_CORRECTION);
        assertThat(judgement.risk()).isEqualTo(Risk.LOW);
        assertThat(judgement.headroomPercent()).isBetween(80.0, 100.0);
        assertThat(judgement.pulls()).hasSize(3).allSatisfy(pull -> {
            assertThat(pull.seconds()).isBetween(3.5, 5.0);
            assertThat(pull.rpmTo()).isGreaterThan(5_500);
            assertThat(pull.manifoldKpa()).isCloseTo(180, within(3.0));
            assertThat(pull.lambdaErrorPercent()).isCloseTo(0, within(1.5));
            assertThat(pull.trace()).hasSizeBetween(30, 120);
        });
    }

    @Test
    void whatTheRecordExpectsIsHeldBesideTheFit() {
        MadeDrive made = new MadeDrive(5).withScale(9);
        ExpectedScale right = new ExpectedScale(9, 9, 9);
        ExpectedScale banded = new ExpectedScale(15, 4, 28);
        ExpectedScale wrong = new ExpectedScale(22, 20, 24);

        assertThat(agreement(made, right)).isEqualTo(Agreement.CONFIRMS);
        assertThat(agreement(new MadeDrive(5).withScale(9), banded)).isEqualTo(Agreement.WITHIN_BAND);
        assertThat(agreement(new MadeDrive(5).withScale(9), wrong)).isEqualTo(Agreement.DIFFERS);
    }

    private static Agreement agreement(MadeDrive made, ExpectedScale expected) {
        Judgement judgement = Fed.judge(made, RESET.withExpected(expected));
        Agreement agreement =
                Objects.requireNonNull(Objects.requireNonNull(judgement.fit()).agreement());
        Finding scale = judgement.findings().stream()
                .filter(finding -> finding.code() == Code.SCALE_ERROR)
                .findFirst()
                .orElseThrow();
        String end = switch (agreement) {
            case CONFIRMS -> ".confirmed";
            case WITHIN_BAND -> ".within-band";
            case DIFFERS -> ".differs";
        };
        assertThat(scale.sentence().key()).isEqualTo("drivelog.finding.SCALE_ERROR" + end);
        assertThat(scale.numbers()).containsEntry("expectedPercent", expected.percent());
        return agreement;
    }

    @Test
    void injectorsThatAreOpenTooLongAreADeliveryLimit() {
        Injectors small = new Injectors(4, 250, 0.745, 14.7);
        MadeDrive made = new MadeDrive(2);
        Judgement byPulse = Fed.judge(made, RESET);
        assertThat(byPulse.pulls())
                .allSatisfy(pull -> assertThat(pull.dutyPercent()).isBetween(10.0, 85.0));

        List<MadeRow> rows = new MadeDrive(2).rows();
        Judgement byFlow = Logs.judge(Logs.without(rows, Parameter.INJECTOR_PULSE), RESET.withInjectors(small));

        Finding duty = byFlow.findings().stream()
                .filter(finding -> finding.code() == Code.DELIVERY_LIMIT)
                .findFirst()
                .orElseThrow();
        assertThat(duty.numbers().get("dutyPercent")).isGreaterThan(100);
        assertThat(duty.risk()).isEqualTo(Risk.EXTREME);
    }
}
