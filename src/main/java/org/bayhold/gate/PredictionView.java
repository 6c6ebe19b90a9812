package org.bayhold.gate;

import java.util.List;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * What the mismatches of a car do, as answered and as stored; what cannot be computed is absent. {@code docs/prediction.md}.
 *
 * @param lambdaAtTarget open loop, where the calibration asks for 1.000
 * @param lambdaLeft after all that the ECU may correct
 * @param boostReachedKpa absolute
 */
public record PredictionView(
        @Nullable Double airMeterRatio,
        @Nullable Double airMeterBandPercent,
        @Nullable Double fuelDeliveryRatio,
        @Nullable Double fuelDeliveryRatioAtIdle,
        @Nullable Double stoichiometricRatio,
        @Nullable Double lambdaAtTarget,
        @Nullable Double lambdaAtIdle,
        @Nullable Double lambdaLow,
        @Nullable Double lambdaHigh,
        @Nullable Double lambdaLeft,
        @Nullable Double trimDemandPercent,
        double trimAuthorityPercent,
        @Nullable Double authorityUsedPercent,
        @Nullable Double injectorDutyPercent,
        @Nullable Double boostReadingRatio,
        @Nullable Double boostReachedKpa,
        List<NotComputable> notComputable,
        Risk risk,
        List<String> sentences) {
    /** A place of which not everything can be computed, and why. */
    public record NotComputable(Category category, @Nullable String position, String why) {}
}
