package org.bayhold.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.bayhold.page.Units.IMPERIAL;
import static org.bayhold.page.Units.METRIC;

import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures in the other system, against what is published. */
class UnitsTest {
    /**
     * NIST Special Publication 811 (2008), appendix B.8, to all of its digits: what one of the other unit is in SI. The cells for
     * lb/min and lbf·ft are those of its table as well.
     */
    @ParameterizedTest
    @CsvSource({
        "mm, in, 25.4, 1e-13",
        "cm², in², 6.4516, 1e-13",
        "km, mi, 1.609344, 1e-13",
        "kPa, psi, 6.894757, 1e-5",
        "kPa/V, psi/V, 6.894757, 1e-5",
        "g/s, lb/min, 7.559873, 1e-5",
        "Nm, lbf·ft, 1.355818, 1e-4"
    })
    void oneOfTheOtherUnitIsWhatIsPublished(String unit, String other, double published, double percent) {
        assertThat(IMPERIAL.convert(published, unit)).isCloseTo(1, withinPercentage(percent));
        assertThat(IMPERIAL.symbol(unit)).isEqualTo(other);
        assertThat(IMPERIAL.changes(unit)).isTrue();
    }

    /** The same figures from the other side. 5000 ft: public tables of the standard atmosphere give both. */
    @ParameterizedTest
    @CsvSource({
        "101.325, kPa, 14.69595, 1e-4",
        "84.3073, kPa, 12.228, 5e-3",
        "100, km, 62.13712, 1e-5",
        "400, mm, 15.7480315, 1e-6",
    })
    void knownPairsAgree(double value, String unit, double published, double percent) {
        assertThat(IMPERIAL.convert(value, unit)).isCloseTo(published, withinPercentage(percent));
    }

    /** ISO 80000-5: water freezes and boils, and the one temperature that reads the same on both. */
    @ParameterizedTest
    @CsvSource({"0, 32", "100, 212", "-40, -40", "37, 98.6"})
    void degreesHaveAnotherZero(double celsius, double fahrenheit) {
        assertThat(IMPERIAL.convert(celsius, "°C")).isCloseTo(fahrenheit, withinPercentage(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "300 | kPa | 43.5 psi",
                "66 | mm | 2.598 in",
                "15 | g/s | 1.98 lb/min",
                "48300 | km | 30012 mi",
                "52.4 | kPa/V | 7.6 psi/V",
                "90 | °C | 194 °F",
                // by volume: in pounds an hour it would go by the fuel
                "440 | cc/min | 440 cc/min",
                "0.83 | '' | 0.83",
                "25 | % | 25 %"
            })
    void aFigureIsShownWithNoMoreDigitsThanItHas(double value, String unit, String shown) {
        assertThat(IMPERIAL.show(value, unit)).isEqualTo(shown);
    }

    @Test
    void inSiAFigureIsShownAsItWasRecorded() {
        assertThat(METRIC.show(66.25, "mm")).isEqualTo("66.25 mm");
        assertThat(METRIC.show(1e-7, "g/s")).isEqualTo("0.0000001 g/s");
        assertThat(METRIC.show(-0.0, "kPa")).isEqualTo("0 kPa");
        assertThat(METRIC.show(150.26, "kPa", 1)).isEqualTo("150.3 kPa");
        assertThat(METRIC.show(1200, "kPa", 1)).isEqualTo("1200 kPa");
        assertThat(METRIC.changes("kPa")).isFalse();
    }

    /** A longer way is no shorter in miles, and what is added adds. */
    @Test
    void conversionKeepsOrderAndSums() {
        SplittableRandom random = new SplittableRandom(Seed.OF_THIS_RUN);
        for (String unit : new String[] {"mm", "cm²", "km", "kPa", "kPa/V", "g/s", "Nm"}) {
            for (int i = 0; i < 200; i++) {
                double one = random.nextDouble(-1e4, 1e4);
                double other = random.nextDouble(-1e4, 1e4);
                assertThat(IMPERIAL.convert(one, unit) < IMPERIAL.convert(other, unit))
                        .isEqualTo(one < other);
                assertThat(IMPERIAL.convert(one, unit) + IMPERIAL.convert(other, unit))
                        .isCloseTo(IMPERIAL.convert(one + other, unit), org.assertj.core.api.Assertions.within(1e-8));
            }
        }
    }
}
