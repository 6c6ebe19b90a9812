package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.bayhold.drivelog.Missing.Code;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is missing keeps a drive from passing, and is said. docs/drive-log.md, D14 and D15. */
class VerdictTest {
    private static final List<MadeRow> SOUND = new MadeDrive(3).rows();

    private static Set<Code> missing(Judgement judgement) {
        Set<Code> codes = EnumSet.noneOf(Code.class);
        judgement.missing().forEach(missing -> codes.add(missing.code()));
        return codes;
    }

    @Test
    void aWholeLogPasses() {
        Judgement judgement = Logs.judge(Logs.of(SOUND));

        assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
        assertThat(judgement.unjudged())
                .as("neither a target nor a second engine is on record")
                .containsExactly(Unjudged.BOOST);
        assertThat(judgement.trims().axis()).isEqualTo(LoadAxis.CALCULATED_LOAD);
        double cells = judgement.trims().cells().stream()
                .mapToDouble(TrimMap.Cell::seconds)
                .sum();
        assertThat(cells)
                .isCloseTo(judgement.seconds().idle() + judgement.seconds().cruise(), within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        "ENGINE_SPEED, ENGINE_SPEED WARM_CLOSED_LOOP IDLE CRUISE FULL_LOAD",
        "COOLANT_TEMPERATURE, COOLANT_TEMPERATURE WARM_CLOSED_LOOP IDLE CRUISE",
        "SHORT_TRIM_1 SHORT_TRIM_2, TRIMS WARM_CLOSED_LOOP IDLE CRUISE",
        "LONG_TRIM_1 LONG_TRIM_2, TRIMS WARM_CLOSED_LOOP IDLE CRUISE",
        "AIRFLOW MANIFOLD_PRESSURE CALCULATED_LOAD, LOAD WARM_CLOSED_LOOP IDLE CRUISE",
        "ACCELERATOR THROTTLE, PEDAL FULL_LOAD",
        "MEASURED_LAMBDA, MEASURED_LAMBDA",
        "COMMANDED_RATIO, COMMANDED_RATIO",
    })
    void whatIsNotLoggedIsMissing(String without, String expected) {
        Parameter[] parameters =
                List.of(without.split(" ")).stream().map(Parameter::valueOf).toArray(Parameter[]::new);

        Judgement judgement = Logs.judge(Logs.without(SOUND, parameters));

        assertThat(judgement.verdict()).isEqualTo(Verdict.INSUFFICIENT);
        assertThat(missing(judgement))
                .containsExactlyInAnyOrderElementsOf(
                        List.of(expected.split(" ")).stream().map(Code::valueOf).toList());
        assertThat(judgement.missing())
                .allSatisfy(missing ->
                        assertThat(missing.sentence().key()).isEqualTo("drivelog.missing." + missing.code()));
    }

    @ParameterizedTest
    @CsvSource({
        "ACCELERATOR",
        "SHORT_TRIM_2 LONG_TRIM_2",
        "SHORT_TRIM_1 LONG_TRIM_1",
        "CALCULATED_LOAD",
        "AIRFLOW",
        "FUEL_SYSTEM_STATUS",
        "VEHICLE_SPEED",
        "CALCULATED_LOAD MANIFOLD_PRESSURE",
    })
    void whatSomethingElseStandsInForIsNotMissing(String without) {
        Parameter[] parameters =
                List.of(without.split(" ")).stream().map(Parameter::valueOf).toArray(Parameter[]::new);

        Judgement judgement = Logs.judge(Logs.without(SOUND, parameters));

        assertThat(judgement.verdict()).as("%s", judgement.missing()).isEqualTo(Verdict.PASS);
    }

    @Test
    void theFlowIsEstimatedWhereItIsNotLogged() {
        List<MadeRow> rows = new MadeDrive(4).withScale(8).withOffset(0.2).rows();
        EngineFacts facts = EngineFacts.UNKNOWN.withDisplacementCc(MadeDrive.displacementCc());

        Fit logged = Objects.requireNonNull(Logs.judge(Logs.of(rows), facts).fit());
        Fit estimated = Objects.requireNonNull(
                Logs.judge(Logs.without(rows, Parameter.AIRFLOW), facts).fit());

        assertThat(logged.source()).isEqualTo(AirSource.LOGGED);
        assertThat(estimated.source()).isEqualTo(AirSource.IDEAL_GAS);
        assertThat(estimated.scalePercent()).isBetween(7.0, 9.0);
        assertThat(Logs.judge(Logs.without(rows, Parameter.AIRFLOW)).fit())
                .as("nobody knows the displacement")
                .isNull();
        assertThat(Logs.judge(Logs.without(rows, Parameter.AIRFLOW)).unjudged()).contains(Unjudged.ERROR_OVER_FLOW);
    }

    /** Air is what absolute load says by its definition, and goes before the ideal gas. */
    @Test
    void absoluteLoadStandsInForTheFlow() {
        List<MadeRow> rows = new MadeDrive(4).withScale(8).withOffset(0.2).rows();
        String[] lines = Logs.without(rows, Parameter.AIRFLOW).split("\n", -1);
        lines[0] += ",LOAD_ABS";
        for (int i = 1; i <= rows.size(); i++) {
            lines[i] += "," + rows.get(i - 1).absoluteLoad();
        }
        EngineFacts facts = EngineFacts.UNKNOWN.withDisplacementCc(MadeDrive.displacementCc());

        Fit fit = Objects.requireNonNull(
                Logs.judge(String.join("\n", lines), facts).fit());

        assertThat(fit.source()).isEqualTo(AirSource.ABSOLUTE_LOAD);
        assertThat(fit.scalePercent()).isBetween(7.4, 8.6);
        assertThat(fit.offsetGPerS()).isBetween(0.15, 0.25);
        assertThat(fit.at(10)).isCloseTo(fit.scalePercent() + 10 * fit.offsetGPerS(), within(1e-9));
    }

    @Test
    void timeThatIsMissingIsTold() {
        Judgement judgement = Fed.judge(new MadeDrive(3).withoutPulls());

        Missing load = judgement.missing().get(0);
        assertThat(load.code()).isEqualTo(Code.FULL_LOAD);
        assertThat(load.needed()).isEqualTo(3);
        assertThat(load.seen()).isZero();
        assertThat(load.sentence().arguments()).isEqualTo(List.of(3L, 0L));
    }

    @Test
    void aColdEngineSaysNothing() {
        StringBuilder cold = new StringBuilder();
        List<MadeRow> rows = SOUND.subList(0, 150);
        cold.append(Logs.of(rows));

        Judgement judgement = Logs.judge(cold.toString());

        assertThat(judgement.verdict()).isEqualTo(Verdict.INSUFFICIENT);
        assertThat(judgement.has(Finding.Code.COLD_OR_OPEN_LOOP_ONLY)).isTrue();
        assertThat(judgement.headroomPercent()).isNull();
        assertThat(judgement.trims().cells()).isEmpty();
        assertThat(missing(judgement)).contains(Code.WARM_CLOSED_LOOP, Code.IDLE, Code.CRUISE, Code.FULL_LOAD);
    }

    @Test
    void aTargetWithoutAPressureIsMissing() {
        Judgement judgement = Logs.judge(
                Logs.without(SOUND, Parameter.MANIFOLD_PRESSURE), EngineFacts.UNKNOWN.withBoostTargetKpa(180));

        assertThat(missing(judgement)).containsExactly(Code.MANIFOLD_PRESSURE);
    }

    /** Gears change: each is a pull of its own, and what is too short is none. */
    @Test
    void aGentleDriverNeverSawFullLoad() {
        String gentle = Logs.without(SOUND, Parameter.THROTTLE, Parameter.ACCELERATOR);
        StringBuilder text = new StringBuilder();
        int row = 0;
        for (String line : gentle.split("\n", -1)) {
            if (!line.isEmpty()) {
                text.append(line)
                        .append(row == 0 ? ",Throttle" : "," + (14 + row % 30))
                        .append('\n');
                row++;
            }
        }

        Judgement judgement = Logs.judge(text.toString());

        assertThat(judgement.pulls()).isEmpty();
        assertThat(missing(judgement)).containsExactly(Code.FULL_LOAD);
    }
}
