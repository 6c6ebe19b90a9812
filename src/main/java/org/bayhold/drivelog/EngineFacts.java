package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * What is on record of the engine and of its calibration, as far as it is. What is null is not known, and limits what can
 * be said.
 *
 * @param displacementCc of all cylinders
 * @param boostTargetKpa absolute, of the revision
 * @param airflowCeilingGPerS the largest flow that the sensor can read
 * @param trimAuthorityPercent by how much the ECU may correct
 * @param adaptationsReset whether what was learned before the flash was cleared
 * @param expected the scale error that the record leads one to expect
 */
public record EngineFacts(
        @Nullable Double displacementCc,
        @Nullable Double boostTargetKpa,
        @Nullable Double airflowCeilingGPerS,
        @Nullable Injectors injectors,
        double trimAuthorityPercent,
        @Nullable Boolean adaptationsReset,
        @Nullable ExpectedScale expected) {
    /** As in {@code docs/prediction.md, P15}. */
    public static final double USUAL_AUTHORITY_PERCENT = 25;

    public static final EngineFacts UNKNOWN =
            new EngineFacts(null, null, null, null, USUAL_AUTHORITY_PERCENT, null, null);

    /**
     * The injectors on the car.
     *
     * @param flowCcPerMin of one, at the pressure that the car has
     * @param densityKgPerL of the fuel
     * @param stoichiometricRatio of the fuel in the tank
     */
    public record Injectors(int count, double flowCcPerMin, double densityKgPerL, double stoichiometricRatio) {
        public Injectors {
            if (count < 1 || isNoAmount(flowCcPerMin) || isNoAmount(densityKgPerL) || isNoAmount(stoichiometricRatio)) {
                throw new IllegalArgumentException("Injectors have a number, a flow, a density and a ratio above 0");
            }
        }
    }

    /**
     * The trim that a known mismatch asks for: {@code trimDemandPercent} of the prediction, with its band.
     *
     * @param lowPercent the lower end of the band; equal to {@code percent} where there is none
     */
    public record ExpectedScale(double percent, double lowPercent, double highPercent) {
        public ExpectedScale {
            if (!(lowPercent <= percent && percent <= highPercent)
                    || !Double.isFinite(lowPercent)
                    || !Double.isFinite(highPercent)) {
                throw new IllegalArgumentException("The expected scale lies in its band");
            }
        }
    }

    public EngineFacts {
        if (isNoAmountAtAll(displacementCc)
                || isNoAmountAtAll(boostTargetKpa)
                || isNoAmountAtAll(airflowCeilingGPerS)
                || isNoAmount(trimAuthorityPercent)) {
            throw new IllegalArgumentException("What is known of an engine is above 0");
        }
    }

    private static boolean isNoAmountAtAll(@Nullable Double value) {
        return value != null && isNoAmount(value);
    }

    private static boolean isNoAmount(double value) {
        return !(value > 0 && value < Double.POSITIVE_INFINITY);
    }

    public EngineFacts withDisplacementCc(double value) {
        return new EngineFacts(
                value,
                boostTargetKpa,
                airflowCeilingGPerS,
                injectors,
                trimAuthorityPercent,
                adaptationsReset,
                expected);
    }

    public EngineFacts withBoostTargetKpa(double value) {
        return new EngineFacts(
                displacementCc,
                value,
                airflowCeilingGPerS,
                injectors,
                trimAuthorityPercent,
                adaptationsReset,
                expected);
    }

    public EngineFacts withAirflowCeilingGPerS(double value) {
        return new EngineFacts(
                displacementCc, boostTargetKpa, value, injectors, trimAuthorityPercent, adaptationsReset, expected);
    }

    public EngineFacts withInjectors(Injectors value) {
        return new EngineFacts(
                displacementCc,
                boostTargetKpa,
                airflowCeilingGPerS,
                value,
                trimAuthorityPercent,
                adaptationsReset,
                expected);
    }

    public EngineFacts withAdaptationsReset(boolean value) {
        return new EngineFacts(
                displacementCc, boostTargetKpa, airflowCeilingGPerS, injectors, trimAuthorityPercent, value, expected);
    }

    public EngineFacts withExpected(ExpectedScale value) {
        return new EngineFacts(
                displacementCc,
                boostTargetKpa,
                airflowCeilingGPerS,
                injectors,
                trimAuthorityPercent,
                adaptationsReset,
                value);
    }
}
