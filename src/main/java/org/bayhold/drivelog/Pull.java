package org.bayhold.drivelog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One acceleration at full load. What is not logged is null. {@code docs/drive-log.md, D12}.
 *
 * @param beginSeconds since the log began
 * @param pedalPercent its mean, of the sensor's own range
 * @param lambdaErrorPercent the mean of measured over commanded lambda, less 1
 * @param leanestPercent of the second in which it was leanest; below 0 where it never was lean
 * @param richestPercent of the second in which it was richest; below 0 is rich
 * @param manifoldKpa the highest pressure that held for 0.3 s, absolute
 * @param knockDegrees the most retard, whatever its sign in the log
 * @param airflowGPerS the most
 * @param flatAirflowRpm by how much the engine speed rose while the airflow stayed at its highest
 * @param dutyPercent the most that the injectors were open, of the time
 * @param trace some moments of it, for its picture
 */
public record Pull(
        long firstRow,
        long lastRow,
        double beginSeconds,
        double seconds,
        double rpmFrom,
        double rpmTo,
        double pedalPercent,
        @Nullable Double lambdaErrorPercent,
        @Nullable Double leanestPercent,
        @Nullable Double richestPercent,
        @Nullable Double manifoldKpa,
        @Nullable Double knockDegrees,
        @Nullable Double airflowGPerS,
        @Nullable Double flatAirflowRpm,
        @Nullable Double dutyPercent,
        List<Moment> trace) {
    public Pull {
        trace = List.copyOf(trace);
    }

    /**
     * A moment of a pull.
     *
     * @param seconds since it began
     */
    public record Moment(
            double seconds,
            double rpm,
            @Nullable Double lambda,
            @Nullable Double commanded,
            @Nullable Double manifoldKpa,
            @Nullable Double knockDegrees,
            @Nullable Double airflowGPerS) {}

    /** By which of many pulls some are kept, and drawn: the larger, the more it matters. */
    public double concern() {
        double lean = leanestPercent == null ? 0 : Math.abs(leanestPercent);
        double rich = richestPercent == null ? 0 : Math.abs(richestPercent) / 2;
        double knock = knockDegrees == null ? 0 : knockDegrees;
        double duty = dutyPercent == null ? 0 : dutyPercent / 10;
        return Math.max(Math.max(lean, rich), Math.max(knock, duty));
    }
}
