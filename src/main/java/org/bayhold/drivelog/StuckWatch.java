package org.bayhold.drivelog;

import org.bayhold.drivelog.Flaw.Kind;

/**
 * A sensor that gives the same number, bit by bit, while the engine does something else is stuck, and what it gives is
 * not known. {@code docs/drive-log.md, D6}.
 */
final class StuckWatch {
    private static final double SECONDS = 20;
    private static final double WITNESS_SPAN_RPM = 1_000;
    /** For the engine speed itself, whose witness is the air: the largest by the smallest. */
    private static final double WITNESS_RATIO = 2;

    private final Parameter watched;
    private final Flaws flaws;
    private double value = Double.NaN;
    private double since;
    private double low;
    private double high;
    private boolean stuck;

    StuckWatch(Parameter watched, Flaws flaws) {
        this.watched = watched;
        this.flaws = flaws;
    }

    void look(Sample sample) {
        double now = sample.of(watched);
        if (Double.isNaN(now)) {
            return;
        }
        if (now != value || sample.isAfterABreak) {
            value = now;
            since = sample.time;
            low = Double.POSITIVE_INFINITY;
            high = Double.NEGATIVE_INFINITY;
            stuck = false;
        }
        double witness = witness(sample);
        low = witness < low ? witness : low;
        high = witness > high ? witness : high;
        if (!stuck && sample.time - since >= SECONDS && isMoving()) {
            stuck = true;
            flaws.lasts(Kind.STUCK, watched, 1, sample.time - since, sample.row);
        }
        if (stuck) {
            flaws.lasts(Kind.STUCK, watched, 0, sample.seconds, sample.row);
            sample.values[watched.index()] = Double.NaN;
        }
    }

    private double witness(Sample sample) {
        if (watched != Parameter.ENGINE_SPEED) {
            return sample.of(Parameter.ENGINE_SPEED);
        }
        if (sample.has(Parameter.AIRFLOW)) {
            return sample.of(Parameter.AIRFLOW);
        }
        return sample.has(Parameter.MANIFOLD_PRESSURE)
                ? sample.of(Parameter.MANIFOLD_PRESSURE)
                : sample.of(Parameter.CALCULATED_LOAD);
    }

    private boolean isMoving() {
        return watched == Parameter.ENGINE_SPEED
                ? low > 0 && high / low >= WITNESS_RATIO
                : high - low >= WITNESS_SPAN_RPM;
    }
}
