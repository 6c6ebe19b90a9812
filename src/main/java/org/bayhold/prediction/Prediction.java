package org.bayhold.prediction;

import java.util.List;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/**
 * What the mismatches of a car do, as far as it can be computed. A number that nobody can compute is absent, never 1.
 * {@code docs/prediction.md}.
 *
 * @param mixture at load, where the calibration asks for lambda 1.000, open loop; absent where no ratio is known
 * @param mixtureAtIdle the same at idle; absent where a part's ratio at idle is not known
 * @param injectorDutyPercent at the peak airflow
 * @param alone each part for itself: two may hide each other
 * @param trace how each number came about
 */
public record Prediction(
        Ratios ratios,
        @Nullable Mixture mixture,
        @Nullable Mixture mixtureAtIdle,
        @Nullable Boost boost,
        @Nullable Double injectorDutyPercent,
        double trimAuthorityPercent,
        List<NotComputable> notComputable,
        Risk risk,
        List<Sentence> sentences,
        List<Alone> alone,
        List<Step> trace) {
    public Prediction {
        notComputable = List.copyOf(notComputable);
        sentences = List.copyOf(sentences);
        alone = List.copyOf(alone);
        trace = List.copyOf(trace);
    }

    /**
     * The ratios of the chain.
     *
     * @param airMeter air believed over true air
     * @param airMeterBandPercent how far the square of the bore strays
     * @param fuelDelivery fuel mass delivered over what the ECU believes, at a long pulse
     * @param stoichiometric stoichiometric ratio of the calibration's fuel over that of the fuel in the tank
     */
    public record Ratios(
            @Nullable Double airMeter,
            @Nullable Double airMeterBandPercent,
            @Nullable Double fuelDelivery,
            @Nullable Double fuelDeliveryAtIdle,
            @Nullable Double stoichiometric) {}

    /**
     * What the engine burns.
     *
     * @param lambdaLow with the band; null where there is none
     * @param trimDemandPercent the extra fuel that it takes to come back; negative is less
     * @param authorityUsedPercent beyond 100 the ECU cannot come back
     * @param lambdaLeft once the closed loop has done what it may; 1 within its authority
     */
    public record Mixture(
            double lambda,
            @Nullable Double lambdaLow,
            @Nullable Double lambdaHigh,
            double trimDemandPercent,
            double authorityUsedPercent,
            double lambdaLeft) {}

    /**
     * What a pressure sensor of another range does.
     *
     * @param readingRatio believed over true absolute pressure, at the target; null where the sensor cannot read it
     * @param reachedKpa absolute pressure that a closed loop reaches; null where the signal it waits for never comes
     * @param excessPercent of that over the target
     */
    public record Boost(
            @Nullable Double readingRatio,
            @Nullable Double reachedKpa,
            @Nullable Double excessPercent) {}

    /** One part, as if it were the only one that differs. */
    public record Alone(
            Place place, Mixture mixture, @Nullable Mixture mixtureAtIdle) {}
}
