package org.bayhold.prediction;

/**
 * Gasoline with ethanol, by volume. {@code docs/prediction.md, P13}: the stoichiometric ratio goes by mass, since air
 * for each kilogram adds; the mean by volume is a common mistake.
 */
record Blend(double ethanolPercent) {
    static final double ETHANOL_KG_PER_LITRE = 0.789;
    static final double GASOLINE_KG_PER_LITRE = 0.745;
    static final double STOICH_ETHANOL = 9.00;
    static final double STOICH_GASOLINE = 14.7;

    double densityKgPerLitre() {
        double v = ethanolPercent / 100;
        return v * ETHANOL_KG_PER_LITRE + (1 - v) * GASOLINE_KG_PER_LITRE;
    }

    /** Ethanol by mass, 0 to 1. */
    double ethanolByMass() {
        return ethanolPercent / 100 * ETHANOL_KG_PER_LITRE / densityKgPerLitre();
    }

    /** Kilograms of air for each kilogram of fuel. */
    double stoichiometry() {
        double w = ethanolByMass();
        return w * STOICH_ETHANOL + (1 - w) * STOICH_GASOLINE;
    }
}
