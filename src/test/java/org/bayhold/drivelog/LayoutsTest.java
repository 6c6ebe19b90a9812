package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** One drive in every layout: what is read of it is the same. docs/drive-log.md, D2 to D5. */
class LayoutsTest {
    private static final List<MadeRow> ROWS =
            new MadeDrive(7).withScale(9).withOffset(0.3).rows();

    private static Judgement plain = judged(LogText.PLAIN);

    private static Judgement judged(LogText layout) {
        try {
            return DriveLogs.judge(
                    layout.stream(ROWS), layout.request(), EngineFacts.UNKNOWN, Thresholds.DEFAULTS, bytes -> {});
        } catch (IOException | RefusedLogException e) {
            throw new AssertionError(layout + ": " + e.getMessage(), e);
        }
    }

    @BeforeAll
    static void theDriveSaysSomething() {
        plain = judged(LogText.PLAIN);
        assertThat(plain.fit()).isNotNull();
        assertThat(plain.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(plain.pulls()).hasSize(3);
    }

    @ParameterizedTest
    @EnumSource
    void everyLayoutSaysTheSame(LogText layout) {
        Judgement judgement = judged(layout);

        assertThat(judgement.quality().moments()).isEqualTo(ROWS.size());
        assertThat(judgement.quality().seconds()).isCloseTo(plain.quality().seconds(), within(0.11));
        assertThat(judgement.quality().parameters())
                .containsAll(EnumSet.complementOf(EnumSet.of(
                        Parameter.TIME,
                        Parameter.ABSOLUTE_LOAD,
                        Parameter.BAROMETRIC_PRESSURE,
                        Parameter.IGNITION_ADVANCE,
                        Parameter.RAIL_PRESSURE,
                        Parameter.ETHANOL_PERCENT,
                        Parameter.MODULE_VOLTAGE)));
        assertThat(judgement.quality().flaws()).isEmpty();
        assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
        Fit fit = Objects.requireNonNull(judgement.fit());
        Fit same = Objects.requireNonNull(plain.fit());
        assertThat(fit.scalePercent()).isCloseTo(same.scalePercent(), within(0.02));
        assertThat(fit.offsetGPerS()).isCloseTo(same.offsetGPerS(), within(0.002));
        assertThat(judgement.seconds().idle()).isCloseTo(plain.seconds().idle(), within(0.2));
        assertThat(judgement.seconds().fullLoad()).isCloseTo(plain.seconds().fullLoad(), within(0.2));
        assertThat(judgement.pulls()).hasSize(3);
        assertThat(judgement.findings().stream().map(Finding::code).toList())
                .isEqualTo(plain.findings().stream().map(Finding::code).toList());
    }
}
