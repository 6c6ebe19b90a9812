package org.bayhold.prediction;

import java.util.List;
import java.util.Optional;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/**
 * What the mismatches of a car do from idle to full load: the arithmetic of {@link Predictions}, asked at one airflow after
 * another. {@code docs/prediction.md, P18}.
 *
 * @param mixture absent where no ratio is known at load
 * @param duty absent where a figure is not recorded
 * @param dutyNeeds what would have to be recorded for it
 */
public record Sweep(@Nullable MixtureLine mixture, @Nullable DutyLine duty, List<Sentence> dutyNeeds) {
    public Sweep {
        dutyNeeds = List.copyOf(dutyNeeds);
    }

    /** An airflow that the revision names. */
    public enum Named {
        IDLE,
        CRUISE,
        PEAK
    }

    /**
     * Lambda across the airflow, at long pulses, where the calibration asks for 1.000.
     *
     * @param points by rising airflow, at least one
     * @param spots the named airflows; the idle is the one with the dead times
     * @param fromGPerS where it was to begin
     * @param toGPerS where it was to end
     * @param tableBeginsGPerS where a transfer table begins, if that is later than {@code fromGPerS}
     * @param tableEndsGPerS where a transfer table ends, if that is no later than {@code toGPerS}
     * @param pulsesMatterAtIdle the dead times differ or are not recorded, so that the line begins at cruise
     * @param richLimit the lambda from which the ECU can take no more fuel away
     * @param leanLimit the lambda from which the ECU can add no more fuel
     */
    public record MixtureLine(
            List<Point> points,
            List<Spot> spots,
            double fromGPerS,
            double toGPerS,
            @Nullable Double tableBeginsGPerS,
            @Nullable Double tableEndsGPerS,
            boolean pulsesMatterAtIdle,
            double richLimit,
            double leanLimit) {
        public MixtureLine {
            points = List.copyOf(points);
            spots = List.copyOf(spots);
        }
    }

    public record Point(double flowGPerS, Mixture mixture) {}

    /** @param mixture null where it is not known there */
    public record Spot(
            Named named, double flowGPerS, @Nullable Mixture mixture) {}

    /**
     * Injector duty: straight from no air to the peak airflow, everything else as it is there.
     *
     * @param lambda the mixture at full load
     */
    public record DutyLine(
            double peakGPerS, double percentAtPeak, double lambda, double idleGPerS, double cruiseGPerS) {
        public double percentAt(double flowGPerS) {
            return percentAtPeak * flowGPerS / peakGPerS;
        }

        /** Where the injectors are open so much of the time, be it beyond the peak. */
        public double flowAt(double percent) {
            return peakGPerS * percent / percentAtPeak;
        }
    }

    /** Empty where nothing differs. */
    public static Optional<Sweep> of(Build build) {
        return Predictions.of(build).map(prediction -> of(build, prediction));
    }

    static Sweep of(Build build, Prediction prediction) {
        Workings workings = new Workings(build);
        DutyLine duty = duty(prediction, workings.assumes);
        boolean spark = !workings.assumes.isCompressionIgnition();
        List<Sentence> needs =
                spark ? Duty.needs(workings) : List.of(new Sentence("prediction.why.compression-ignition", List.of()));
        return new Sweep(new MixtureSweep(build, prediction).line(), duty, duty == null ? needs : List.of());
    }

    private static @Nullable DutyLine duty(Prediction prediction, Assumptions assumes) {
        Double percent = prediction.injectorDutyPercent();
        Double peak = assumes.peakAirflow().map(Input::value).orElse(null);
        return percent == null || peak == null
                ? null
                : new DutyLine(
                        peak,
                        percent,
                        assumes.peakLambda().value(),
                        assumes.idleAirflow().value(),
                        assumes.cruiseAirflow().value());
    }
}
