package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/** How much air the ECU believes in: what it says, else what follows from what it says. {@code docs/drive-log.md, D8}. */
final class Air {
    /** Of dry air, J/(kg K): as {@code docs/prediction.md, P8}. */
    private static final double GAS_CONSTANT = 287.05;
    /** Of a four-stroke engine at part load; common practice. */
    private static final double VOLUMETRIC_EFFICIENCY = 0.85;
    /** g/l, in the definition of absolute load (SAE J1979 as quoted publicly). */
    private static final double STANDARD_DENSITY = 1.184;

    private static final double KELVIN = 273.15;

    private final double litres;

    Air(@Nullable Double displacementCc) {
        this.litres = displacementCc == null ? Double.NaN : displacementCc / 1_000;
    }

    static AirSource source(Sample sample, boolean knowsDisplacement) {
        if (sample.has(Parameter.AIRFLOW)) {
            return AirSource.LOGGED;
        }
        if (!knowsDisplacement || !sample.has(Parameter.ENGINE_SPEED)) {
            return AirSource.NONE;
        }
        if (sample.has(Parameter.ABSOLUTE_LOAD)) {
            return AirSource.ABSOLUTE_LOAD;
        }
        return sample.has(Parameter.MANIFOLD_PRESSURE) && sample.has(Parameter.INTAKE_AIR_TEMPERATURE)
                ? AirSource.IDEAL_GAS
                : AirSource.NONE;
    }

    AirSource source(Sample sample) {
        return source(sample, !Double.isNaN(litres));
    }

    /** g/s; NaN where it cannot be known. */
    double flow(Sample sample) {
        return switch (source(sample)) {
            case NONE -> Double.NaN;
            case LOGGED -> sample.of(Parameter.AIRFLOW);
            case ABSOLUTE_LOAD ->
                byAbsoluteLoad(sample.of(Parameter.ABSOLUTE_LOAD), litres, sample.of(Parameter.ENGINE_SPEED));
            case IDEAL_GAS ->
                VOLUMETRIC_EFFICIENCY
                        * byIdealGas(
                                sample.of(Parameter.MANIFOLD_PRESSURE),
                                sample.of(Parameter.INTAKE_AIR_TEMPERATURE),
                                litres,
                                sample.of(Parameter.ENGINE_SPEED));
        };
    }

    /** A four-stroke engine takes in its displacement every second revolution. */
    static double byAbsoluteLoad(double percent, double litres, double rpm) {
        return percent / 100 * STANDARD_DENSITY * litres * rpm / 120;
    }

    /** At a volumetric efficiency of 1: kPa and litres make joules, joules by the gas constant grams of a thousandth. */
    static double byIdealGas(double kpa, double celsius, double litres, double rpm) {
        return kpa * litres / (GAS_CONSTANT * (celsius + KELVIN)) * 1_000 * rpm / 120;
    }
}
