package org.bayhold.architecture;

import java.util.Set;

/**
 * What goes into a step of a prediction and is neither an attribute nor a category, as the bundle names it. That it is all of
 * them, {@code gate.TracesTest} tries.
 */
final class InputNames {
    static final Set<String> ALL = Set.of(
            "airMeterRatio",
            "fuelDeliveryRatio",
            "stoichiometricRatio",
            "lambdaAtTarget",
            "trimDemandPercent",
            "airMeterBandPercent",
            "densityKgPerLitre",
            "stoich",
            "flowRatio",
            "deadTimeRatio",
            "signal",
            "believedGPerS",
            "airMeterRatioAtIdle",
            "airMeterRatioAtCruise",
            "airMeterRatioAtPeak",
            "pressureKpa",
            "boostTargetKpa",
            "boostReachedKpa",
            "cylinders",
            "ethanolKgPerLitre",
            "gasolineKgPerLitre",
            "stoichEthanol",
            "stoichGasoline");

    private InputNames() {}
}
