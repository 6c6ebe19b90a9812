package org.bayhold.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From an error of the fuel to lambda and trim; the sign of a trim is that of SAE J1979 (public tables of its parameters). */
class ChainTest {
    /** lambda = target / f and trim = 1/f - 1: the definition of lambda. */
    @ParameterizedTest
    @CsvSource({
        "0.75,   1.3333, 19.600,  33.333, 1.1333, 1.0667",
        "0.80,   1.2500, 18.375,  25.000, 1.0625, 1.0000",
        "0.85,   1.1765, 17.294,  17.647, 1.0000, 0.9412",
        "0.95,   1.0526, 15.474,   5.263, 0.8947, 0.8421",
        "1.05,   0.9524, 14.000,  -4.762, 0.8095, 0.7619",
        "1.25,   0.8000, 11.760, -20.000, 0.6800, 0.6400",
        "1.4773, 0.6769,  9.951, -32.308, 0.5754, 0.5415"
    })
    void fromAnErrorOfTheFuel(double f, double lambda, double airToFuel, double trim, double at085, double at080) {
        double computed = Chain.lambda(1, f, 1);
        assertThat(computed).isCloseTo(lambda, within(5e-5));
        assertThat(computed * 14.7).isCloseTo(airToFuel, within(1e-3));
        assertThat(Chain.trimDemandPercent(computed)).isCloseTo(trim, within(2e-3));
        assertThat(computed * 0.85).isCloseTo(at085, within(5.1e-5));
        assertThat(computed * 0.80).isCloseTo(at080, within(5.1e-5));
    }

    @Test
    void aFifthTooLittleAsksForAQuarterMoreAndAQuarterTooMuchForAFifthLess() {
        assertThat(Chain.trimDemandPercent(Chain.lambda(1, 0.80, 1))).isCloseTo(25, within(1e-9));
        assertThat(Chain.trimDemandPercent(Chain.lambda(1, 1.25, 1))).isCloseTo(-20, within(1e-9));
    }

    /** t = clamp(1/f - 1, -a, +a), lambda left = 1/(f (1 + t)): the definition of a trim that is limited. 650 in place of 440 cc/min is 1.4772727. */
    @ParameterizedTest
    @CsvSource({
        "0.75,     25, 1.0667",
        "0.75,     35, 1.0000",
        "0.817414, 20, 1.0195",
        "0.817414, 25, 1.0000",
        "1.4772727, 20, 0.8462",
        "1.4772727, 25, 0.9026"
    })
    void whatIsLeftBeyondTheAuthority(double f, double authorityPercent, double left) {
        assertThat(Chain.lambdaLeft(Chain.lambda(1, f, 1), authorityPercent)).isCloseTo(left, within(5.1e-5));
    }

    /** +5 and +10 % are 15.5 % and not 15, -8 and +25 % are 15.0 % and not 17: two parts multiply. */
    @ParameterizedTest
    @CsvSource({"5, 10, 15.5", "-8, 25, 15.0"})
    void theTrimsOfTwoPartsMultiply(double one, double other, double together) {
        double lambda = Chain.lambda(1 / (1 + one / 100), 1 / (1 + other / 100), 1);
        assertThat(Chain.trimDemandPercent(lambda)).isCloseTo(together, within(1e-9));
    }
}
