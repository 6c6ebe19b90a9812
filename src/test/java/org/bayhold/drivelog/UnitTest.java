package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** docs/drive-log.md, D4 and D6. */
class UnitTest {
    /** Fixed points of the scales, and factors of NIST SP 811. */
    @ParameterizedTest
    @CsvSource({
        "FAHRENHEIT, 32, 0",
        "FAHRENHEIT, 212, 100",
        "FAHRENHEIT, -40, -40",
        "KELVIN, 273.15, 0",
        "PSI, 14.695949, 101.325",
        "INCH_OF_MERCURY, 29.9213, 101.325",
        "MILLIMETRE_OF_MERCURY, 760, 101.325",
        "BAR, 1.01325, 101.325",
        "HECTOPASCAL, 1013.25, 101.325",
        "PASCAL, 101325, 101.325",
        "MEGAPASCAL, 20, 20000",
        "POUND_PER_MINUTE, 1, 7.5598728",
        "KILOGRAM_PER_HOUR, 360, 100",
        "MILE_PER_HOUR, 100, 160.9344",
        "METRE_PER_SECOND, 10, 36",
        "AIR_FUEL_RATIO, 14.7, 1",
        "AIR_FUEL_RATIO, 12.495, 0.85",
        "FRACTION, 0.5, 50",
        "MILLIVOLT, 13020, 13.02",
        "MILLISECONDS, 1500, 1.5",
        "MICROSECONDS, 1500000, 1.5",
        "MINUTES, 2, 120",
        "PULSE_MICROSECONDS, 2500, 2.5"
    })
    void becomesTheUnitThatIsJudgedIn(Unit unit, double value, double converted) {
        assertThat(unit.convert(value)).isCloseTo(converted, within(1e-3));
    }

    /** The ends of the scaling of SAE J1979, by the bytes that give them. */
    @ParameterizedTest
    @CsvSource({
        "ENGINE_SPEED, 0, 16383.75",
        "CALCULATED_LOAD, 0, 100",
        "ABSOLUTE_LOAD, 0, 25700",
        "COOLANT_TEMPERATURE, -40, 215",
        "INTAKE_AIR_TEMPERATURE, -40, 215",
        "BAROMETRIC_PRESSURE, 0, 255",
        "THROTTLE, 0, 100",
        "IGNITION_ADVANCE, -64, 63.5",
        "RAIL_PRESSURE, 0, 655350",
        "MODULE_VOLTAGE, 0, 65.535",
        "ETHANOL_PERCENT, 0, 100"
    })
    void aSensorGivesNoMoreThanItsScale(Parameter parameter, double lowest, double highest) {
        assertThat(parameter.lowest()).isEqualTo(lowest);
        assertThat(parameter.highest()).isEqualTo(highest);
    }

    @Test
    void bytesOfTheStandardLieWithin() {
        assertThat(255 * 100 / 128.0 - 100)
                .isBetween(Parameter.SHORT_TRIM_1.lowest(), Parameter.SHORT_TRIM_1.highest());
        assertThat(655.35).isLessThan(Parameter.AIRFLOW.highest());
        assertThat(65_535 * 2 / 65_536.0).isLessThanOrEqualTo(Parameter.COMMANDED_RATIO.highest());
    }

    @ParameterizedTest
    @EnumSource
    void everyParameterHasAUnitThatChangesNothing(Parameter parameter) {
        assertThat(parameter.unit().fits(parameter)).isTrue();
        assertThat(parameter.unit().convert(7.25)).isEqualTo(7.25);
        assertThat(parameter.lowest()).isLessThan(parameter.highest());
    }

    @Test
    void whatDoesNotFitIsRefusedAtBirth() {
        assertThatThrownBy(() -> new MappedColumn(Parameter.AIRFLOW, Unit.VOLT))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReadRequest.PLAIN.withSampleSeconds(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReadRequest.PLAIN.withSampleSeconds(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReadRequest.PLAIN.withMaxBytes(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EngineFacts.UNKNOWN.withDisplacementCc(-1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EngineFacts.UNKNOWN.withBoostTargetKpa(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EngineFacts.Injectors(0, 440, 0.745, 14.7))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EngineFacts.ExpectedScale(5, 6, 7)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(
                        () -> new Thresholds(-1, 5, 10, 10, 60, 180, 3, 1.5, 80, 3, true, 7, 3, 6, 5, 3, 1, 85, 2, 5))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(ReadRequest.PLAIN
                        .withColumns(Map.of("x", new MappedColumn(Parameter.TIME, Unit.SECONDS)))
                        .columns())
                .hasSize(1);
    }

    /** The air that SAE J1979 defines absolute load by, and the ideal gas: both worked out by hand. */
    @Test
    void airByLoadAndByPressure() {
        double perStroke = 0.525794;
        double percent = 88.8166;
        assertThat(Air.byAbsoluteLoad(percent, 2.0, 3_000)).isCloseTo(perStroke * 4 * 3_000 / 120, within(1e-3));
        // 101.325 kPa at 0 C: 1.2922 g/l, 2 l in every second turn, 25 of them a second
        assertThat(Air.byIdealGas(101.325, 0, 2.0, 3_000)).isCloseTo(1.2922 * 2 * 25, within(0.02));
    }
}
