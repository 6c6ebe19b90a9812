package org.bayhold.drivelog;

import org.bayhold.drivelog.Flaw.Kind;

/** How much time passes from row to row, and where it does not pass as it should. {@code docs/drive-log.md, D5}. */
final class Timeline {
    private static final double SHORTEST_GAP_SECONDS = 2;
    private static final double GAP_STEPS = 5;
    private static final double LEARNING = 0.02;

    private final Flaws flaws;
    private double last = Double.NaN;
    private double typical;
    private double total;

    Timeline(double typical, Flaws flaws) {
        this.typical = typical;
        this.flaws = flaws;
    }

    void pass(Sample sample) {
        double step = sample.time - last;
        sample.seconds = 0;
        sample.isAfterABreak = false;
        if (step > 0) {
            if (step <= Math.max(SHORTEST_GAP_SECONDS, GAP_STEPS * typical)) {
                typical = typical == 0 ? step : typical + LEARNING * (step - typical);
                sample.seconds = step;
                total += step;
            } else {
                flaws.lasts(Kind.GAP, null, 1, step, sample.row);
                sample.isAfterABreak = true;
            }
        } else if (step == 0) {
            flaws.count(Kind.REPEATED_TIME, sample.row);
        } else {
            sample.isAfterABreak = true;
            if (step < 0) {
                flaws.count(Kind.BACKWARD_TIME, sample.row);
            }
        }
        last = sample.time;
    }

    /** For how long a value that is not read anew is taken to hold. */
    double holdSeconds() {
        return Math.max(SHORTEST_GAP_SECONDS, 3 * typical);
    }

    double totalSeconds() {
        return total;
    }

    /** Between two rows. */
    double typicalSeconds() {
        return typical;
    }
}
