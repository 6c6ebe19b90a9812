package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.bayhold.drivelog.Column.UnitFrom;
import org.bayhold.drivelog.Flaw.Kind;
import org.junit.jupiter.api.Test;

/** What is wrong with a file is counted and never fatal, and what is missing never becomes 0. docs/drive-log.md, D5 and D6. */
class FlawsTest {
    private static final String HEADER = "Time (s),RPM,MAF,ECT,STFT,LTFT\n";

    private static Flaw flaw(Quality quality, Kind kind) {
        return quality.flaws().stream()
                .filter(flaw -> flaw.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new AssertionError(quality.flaws().toString()));
    }

    @Test
    void gapsAreCountedAndNoTimePassesInThem() {
        Quality quality = Logs.quality(HEADER + rows(0, 10, 0.1) + rows(60, 10, 0.1));

        Flaw gap = flaw(quality, Kind.GAP);
        assertThat(gap.count()).isEqualTo(1);
        assertThat(gap.seconds()).isCloseTo(59.1, within(1e-6));
        assertThat(gap.firstRow()).isEqualTo(12);
        assertThat(quality.seconds()).isCloseTo(1.8, within(1e-6));
        assertThat(quality.badSharePercent()).isGreaterThan(90);
    }

    @Test
    void aSlowLogHasNoGaps() {
        Quality quality = Logs.quality(HEADER + rows(0, 20, 4));

        assertThat(quality.flaws()).isEmpty();
        assertThat(quality.seconds()).isCloseTo(76, within(1e-6));
    }

    @Test
    void aSlowRateThatIsToldHasNoGapsEither() {
        Quality quality = Logs.judge(
                        "RPM,MAF\n" + "800,4\n".repeat(10), ReadRequest.PLAIN.withSampleSeconds(5), EngineFacts.UNKNOWN)
                .quality();

        assertThat(quality.flaws()).isEmpty();
        assertThat(quality.seconds()).isCloseTo(45, within(1e-9));
    }

    @Test
    void repeatedAndBackwardTimesAreCounted() {
        Quality quality = Logs.quality(HEADER + rows(0, 5, 0.1) + "0.4,800,4,88,0,0\n" + rows(0.1, 5, 0.1));

        assertThat(flaw(quality, Kind.REPEATED_TIME).count()).isEqualTo(1);
        assertThat(flaw(quality, Kind.REPEATED_TIME).firstRow()).isEqualTo(7);
        assertThat(flaw(quality, Kind.BACKWARD_TIME).count()).isEqualTo(1);
        assertThat(quality.seconds()).isCloseTo(0.8, within(1e-6));
    }

    @Test
    void whatIsNoNumberIsNotZero() {
        List<MadeRow> rows = new MadeDrive(3).withScale(8).rows();
        String sound = Logs.of(rows);
        String[] lines = sound.split("\n", -1);
        for (int i = 1; i < lines.length - 1; i += 7) {
            String[] fields = lines[i].split(",", -1);
            fields[9] = i % 2 == 0 ? "n/a" : "";
            lines[i] = String.join(",", fields);
        }

        Judgement judgement = Logs.judge(String.join("\n", lines));

        Flaw none = flaw(judgement.quality(), Kind.NOT_A_NUMBER);
        assertThat(none.parameter()).isEqualTo(Parameter.SHORT_TRIM_1);
        assertThat(none.count()).isEqualTo((lines.length - 2 + 6) / 14);
        assertThat(none.firstRow()).isEqualTo(9);
        Fit fit = Objects.requireNonNull(judgement.fit());
        assertThat(fit.scalePercent()).isBetween(7.3, 8.7);
    }

    @Test
    void whatNoSensorCanGiveIsNotUsed() {
        Quality quality = Logs.quality(HEADER + rows(0, 5, 0.1) + "0.5,20000,4,999,0,-200\n");

        assertThat(quality.flaws()).hasSize(3).allSatisfy(flaw -> {
            assertThat(flaw.kind()).isEqualTo(Kind.OUT_OF_RANGE);
            assertThat(flaw.count()).isEqualTo(1);
            assertThat(flaw.firstRow()).isEqualTo(7);
        });
        assertThat(quality.flaws().stream().map(Flaw::parameter))
                .containsExactly(Parameter.ENGINE_SPEED, Parameter.COOLANT_TEMPERATURE, Parameter.LONG_TRIM_1);
    }

    @Test
    void rowsThatDoNotFitAreCounted() {
        Quality quality = Logs.quality(HEADER + rows(0, 5, 0.1) + "0.5,800\n" + "0.6,800,4,88,0,0,7\n"
                + ",800,4,88,0,0\n" + "0.7,800,4,88,0,0,\n");

        assertThat(flaw(quality, Kind.ROW_TOO_SHORT).firstRow()).isEqualTo(7);
        assertThat(flaw(quality, Kind.ROW_TOO_WIDE).count()).isEqualTo(1);
        assertThat(flaw(quality, Kind.ROW_WITHOUT_TIME).firstRow()).isEqualTo(9);
        assertThat(quality.moments())
                .as("a short row is a moment, and an empty field at the end harmless")
                .isEqualTo(7);
    }

    @Test
    void aStuckSensorIsFoundAndNotUsed() {
        List<MadeRow> rows = new MadeDrive(3).rows();
        String[] lines = Logs.of(rows).split("\n", -1);
        for (int i = 1; i < lines.length - 1; i++) {
            String[] fields = lines[i].split(",", -1);
            fields[6] = i > 1_500 ? "17.25" : fields[6];
            lines[i] = String.join(",", fields);
        }

        Judgement judgement = Logs.judge(String.join("\n", lines));

        Flaw stuck = flaw(judgement.quality(), Kind.STUCK);
        assertThat(stuck.parameter()).isEqualTo(Parameter.AIRFLOW);
        assertThat(stuck.count()).isEqualTo(1);
        assertThat(stuck.seconds()).isGreaterThan(300);
        assertThat(judgement.has(Finding.Code.BAD_DATA)).isTrue();
        assertThat(judgement.verdict()).isEqualTo(Verdict.INSUFFICIENT);
        assertThat(judgement.missing().stream().map(Missing::code)).contains(Missing.Code.SOUND_DATA);
    }

    @Test
    void aStuckEngineSpeedIsSeenByTheAir() {
        StringBuilder text = new StringBuilder(HEADER);
        for (int i = 0; i < 600; i++) {
            text.append(String.format(Locale.ROOT, "%.1f,1500,%.2f,88,0,0\n", i * 0.1, 10 + 8 * Math.sin(i / 30.0)));
        }

        assertThat(flaw(Logs.quality(text.toString()), Kind.STUCK).parameter()).isEqualTo(Parameter.ENGINE_SPEED);
    }

    @Test
    void aSteadySensorIsNotStuck() {
        StringBuilder text = new StringBuilder(HEADER);
        for (int i = 0; i < 3_000; i++) {
            text.append(String.format(Locale.ROOT, "%.1f,%d,4.00,88,0,0\n", i * 0.1, 800 + i % 50));
        }

        assertThat(Logs.quality(text.toString()).flaws()).isEmpty();
    }

    @Test
    void aClockOfWholeSecondsIsNotBad() {
        StringBuilder text = new StringBuilder("Time,RPM,MAF\n");
        for (int i = 0; i < 500; i++) {
            text.append(
                    String.format(Locale.ROOT, "%02d:%02d:%02d,800,4\n", i / 10 / 3600, i / 10 / 60 % 60, i / 10 % 60));
        }

        Quality quality = Logs.quality(text.toString());

        assertThat(quality.seconds()).isCloseTo(49, within(1e-6));
        assertThat(quality.badSharePercent()).isZero();
        assertThat(flaw(quality, Kind.REPEATED_TIME).count()).isEqualTo(450);
    }

    @Test
    void millisecondsAreToldBySteps() {
        Quality millis = Logs.quality("time,RPM\n0,800\n100,801\n200,802\n300,803\n");
        Quality seconds = Logs.quality("time,RPM\n0,800\n1,801\n2,802\n3,803\n");
        Quality told = Logs.quality("time (s),RPM\n0,800\n30,801\n60,802\n90,803\n");

        assertThat(millis.seconds()).isCloseTo(0.3, within(1e-9));
        assertThat(seconds.seconds()).isCloseTo(3, within(1e-9));
        assertThat(told.seconds()).isCloseTo(90, within(1e-9));
        assertThat(millis.columns().get(0).unitFrom()).isEqualTo(UnitFrom.ASSUMED);
    }

    /** In a file of readings each parameter has a time of its own; what is old is no longer known. */
    @Test
    void whatIsReadSeldomHoldsForAWhile() {
        StringBuilder text = new StringBuilder("time,parameter,value\n");
        double[] known = new double[3];
        for (int i = 0; i < 400; i++) {
            text.append(String.format(Locale.ROOT, "%.2f,RPM,%d\n", i * 0.1, 800 + i % 7));
            if (i == 0) {
                text.append("0.00,ECT,88\n0.00,STFT,1\n");
            }
        }
        Quality[] quality = new Quality[1];
        try {
            quality[0] = DriveLogs.read(
                    new ByteArrayInputStream(text.toString().getBytes(StandardCharsets.UTF_8)),
                    ReadRequest.PLAIN,
                    sample -> {
                        known[0] += sample.has(Parameter.ENGINE_SPEED) ? sample.seconds : 0;
                        known[1] += sample.has(Parameter.COOLANT_TEMPERATURE) ? sample.seconds : 0;
                        known[2] += sample.has(Parameter.SHORT_TRIM_1) ? sample.seconds : 0;
                    },
                    bytes -> {});
        } catch (IOException | RefusedLogException e) {
            throw new AssertionError(e);
        }

        assertThat(quality[0].moments()).isEqualTo(400);
        assertThat(known[0]).isCloseTo(39.9, within(0.01));
        assertThat(known[1]).isCloseTo(30, within(0.15));
        assertThat(known[2]).isCloseTo(2, within(0.15));
    }

    @Test
    void theWordsOfTheFuelSystemAreRead() {
        assertThat(status("2")).isEqualTo(1);
        assertThat(status("16")).isEqualTo(1);
        assertThat(status("1")).isZero();
        assertThat(status("4")).isZero();
        assertThat(status("8.0")).isZero();
        assertThat(status("CL")).isEqualTo(1);
        assertThat(status("CL-Fault")).isEqualTo(1);
        assertThat(status("Closed loop, using oxygen sensors")).isEqualTo(1);
        assertThat(status("OL-Drive")).isZero();
        assertThat(status(" Open loop ")).isZero();
        assertThat(status(" ")).isNaN();
        assertThat(status("warm")).isEqualTo(Numbers.NONE);
        assertThat(status("x".repeat(100))).isEqualTo(Numbers.NONE);
    }

    private static double status(String text) {
        return FuelStatus.parse(text.toCharArray(), 0, text.length());
    }

    private static String rows(double from, int count, double step) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(String.format(
                    Locale.ROOT, "%.3f,%d,%.2f,88,0,0\n", from + i * step, 800 + i % 3, 4 + i % 5 * 0.01));
        }
        return text.toString();
    }
}
