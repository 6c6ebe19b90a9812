package org.bayhold.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The stoichiometric ratios of the pure fuels, from atomic masses (IUPAC, abridged: C 12.011, H 1.008, O 15.999) and
 * the composition of dry air (28.9647 g/mol, 0.20946 oxygen by mole: US Standard Atmosphere 1976).
 */
class StoichiometryTest {
    private static final double AIR_G_PER_MOL_OF_OXYGEN = 28.9647 / 0.20946;

    /** CxHyOz + (x + y/4 - z/2) O2 = x CO2 + y/2 H2O. */
    private static double airToFuel(double x, double y, double z) {
        return (x + y / 4 - z / 2) * AIR_G_PER_MOL_OF_OXYGEN / (12.011 * x + 1.008 * y + 15.999 * z);
    }

    /** Handbook values as named: the recomputation itself is right. */
    @ParameterizedTest
    @CsvSource({
        "8, 18,   0, 15.13", // iso-octane: Heywood, from memory
        "2, 6,    1,  9.00", // ethanol: US DOE alternative fuels data table
        "1, 1.87, 0, 14.6", // gasoline: Heywood, from memory
        "1, 4,    0, 17.2", // methane: textbook tables
        "0, 2,    0, 34.3", // hydrogen: from memory
        "5, 12,   1, 11.7" // MTBE: from memory
    })
    void theRecomputationAgreesWithHandbooks(double x, double y, double z, double handbook) {
        assertThat(airToFuel(x, y, z)).isCloseTo(handbook, withinPercentage(0.6));
    }

    @Test
    void ethanolIsRightWithinOnePercent() {
        assertThat(Blend.STOICH_ETHANOL).isCloseTo(airToFuel(2, 6, 1), withinPercentage(1));
    }

    @Test
    void gasolineIsRightWithinOnePercent() {
        assertThat(Blend.STOICH_GASOLINE).isCloseTo(airToFuel(1, 1.87, 0), withinPercentage(1));
    }

    /** Air for each kilogram of fuel adds: half a kilogram of each burns with the mean of both. */
    @ParameterizedTest
    @CsvSource({"5", "15", "30", "50", "85"})
    void aBlendIsRightWithinOnePercent(double ethanolPercent) {
        double ethanolGrams = ethanolPercent * 0.789;
        double gasolineGrams = (100 - ethanolPercent) * 0.745;
        double air = ethanolGrams * airToFuel(2, 6, 1) + gasolineGrams * airToFuel(1, 1.87, 0);
        assertThat(new Blend(ethanolPercent).stoichiometry())
                .isCloseTo(air / (ethanolGrams + gasolineGrams), withinPercentage(1));
    }
}
