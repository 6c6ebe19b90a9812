package org.bayhold.drivelog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The fuelling error over the airflow <i>m</i>: {@code total trim = scale + offset / m}. {@code docs/drive-log.md, D10}.
 *
 * @param scalePercent what multiplies: above 0 the engine gets more air for what is believed, or less fuel
 * @param offsetGPerS what adds: above 0 air comes in that is not metered
 * @param source from what the flow is known; an estimate carries its own error into the offset
 * @param correlation of neighbouring points, already in the standard errors
 * @param points for the picture
 */
public record Fit(
        double scalePercent,
        double scaleStandardError,
        double offsetGPerS,
        double offsetStandardError,
        AirSource source,
        double correlation,
        @Nullable Agreement agreement,
        List<Point> points) {
    public Fit {
        points = List.copyOf(points);
    }

    /** How the scale compares with what the record leads one to expect. */
    public enum Agreement {
        /** Within two standard errors of it. */
        CONFIRMS,
        /** Within two standard errors of its band. */
        WITHIN_BAND,
        DIFFERS
    }

    /** Mean flow and mean total trim of some steady seconds. */
    public record Point(double seconds, double flowGPerS, double trimPercent, long firstRow, long lastRow) {}

    /** What the fit says at a flow, in percent. */
    public double at(double flowGPerS) {
        return scalePercent + 100 * offsetGPerS / flowGPerS;
    }

    boolean isScaleSure() {
        return Math.abs(scalePercent) > 2 * scaleStandardError;
    }

    boolean isOffsetSure() {
        return Math.abs(offsetGPerS) > 2 * offsetStandardError;
    }
}
