package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** docs/drive-log.md, D3 and D4. */
class NamesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "RPM|ENGINE_SPEED|",
                "Engine Speed|ENGINE_SPEED|",
                "engine_speed_rpm|ENGINE_SPEED|RPM",
                "Engine speed [1/min]|ENGINE_SPEED|RPM",
                "Engine speed, rpm|ENGINE_SPEED|RPM",
                "MAF|AIRFLOW|",
                "maf_g_s|AIRFLOW|GRAM_PER_SECOND",
                "Mass air flow rate (lb/min)|AIRFLOW|POUND_PER_MINUTE",
                "MAF / kg/h|AIRFLOW|KILOGRAM_PER_HOUR",
                "ECT (\u00b0F)|COOLANT_TEMPERATURE|FAHRENHEIT",
                "Coolant temp. (deg C)|COOLANT_TEMPERATURE|CELSIUS",
                "Intake manifold absolute pressure (psi)|MANIFOLD_PRESSURE|PSI",
                "MAP [inHg]|MANIFOLD_PRESSURE|INCH_OF_MERCURY",
                "SHRTFT1|SHORT_TRIM_1|",
                "STFT|SHORT_TRIM_1|",
                "STFT B2 %|SHORT_TRIM_2|PERCENT",
                "Short term fuel trim - Bank 1 (%)|SHORT_TRIM_1|PERCENT",
                "Short term fuel trim (bank 2)|SHORT_TRIM_2|",
                "Bank 2 Long Term Fuel Trim|LONG_TRIM_2|",
                "LONGFT1|LONG_TRIM_1|",
                "EQ_RAT|COMMANDED_RATIO|",
                "Lambda|MEASURED_LAMBDA|",
                "AFR (:1)|MEASURED_LAMBDA|AIR_FUEL_RATIO",
                "VSS_mph|VEHICLE_SPEED|MILE_PER_HOUR",
                "Vehicle speed (m/s)|VEHICLE_SPEED|METRE_PER_SECOND",
                "Time (ms)|TIME|MILLISECONDS",
                "time_s|TIME|SECONDS",
                "Throttle %|THROTTLE|PERCENT",
                "APP_D|ACCELERATOR|",
                "FUELSYS1|FUEL_SYSTEM_STATUS|",
                "LOAD_ABS|ABSOLUTE_LOAD|",
                "VPWR (mV)|MODULE_VOLTAGE|MILLIVOLT",
                "Injector pulse width, us|INJECTOR_PULSE|PULSE_MICROSECONDS",
                "ALCH_PCT|ETHANOL_PERCENT|",
                "BARO (mbar)|BAROMETRIC_PRESSURE|HECTOPASCAL",
                "FRP (bar)|RAIL_PRESSURE|BAR",
                "SPARKADV|IGNITION_ADVANCE|"
            })
    void whatIsRecognised(String heading, Parameter parameter, Unit unit) {
        Names.Named named = Objects.requireNonNull(Names.of(heading), heading);

        assertThat(named.parameter()).isEqualTo(parameter);
        assertThat(named.unit()).isEqualTo(unit);
        assertThat(named.unitText()).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "Cabin noise", "Gear", "12.5", "()", "(%)", "rpm limit", "STFT3", "bank 1"})
    void whatIsNot(String heading) {
        assertThat(Names.of(heading)).isNull();
    }

    @ParameterizedTest
    @CsvSource({"MAF (V), V", "MAP (furlong), furlong", "ECT (ohm), ohm"})
    void aUnitOfAnotherKindIsNoUnit(String heading, String unit) {
        Names.Named named = Objects.requireNonNull(Names.of(heading));

        assertThat(named.unit()).isNull();
        assertThat(named.unitText()).isEqualTo(unit);
    }

    @ParameterizedTest
    @ValueSource(ints = {121, 10_000, 100_000})
    void whatIsLongerThanAnyNameIsNone(int length) {
        assertThat(Names.of("rpm ".repeat(length).substring(0, length))).isNull();
    }
}
