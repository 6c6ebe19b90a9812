package org.bayhold.drivelog;

import java.util.List;

/** How much of a file is bad, whatever is bad about it. {@code docs/drive-log.md, D6}. */
final class BadShare {
    private BadShare() {}

    /** Percent: the largest of what gaps take of the time, and of what any one kind of flaw takes of the moments. */
    static double of(List<Flaw> flaws, long moments, double seconds) {
        double worst = 0;
        for (Flaw flaw : flaws) {
            double share = switch (flaw.kind()) {
                case GAP -> flaw.seconds() / (flaw.seconds() + seconds);
                case BACKWARD_TIME, ROW_WITHOUT_TIME, ROW_TOO_WIDE, NOT_A_NUMBER, OUT_OF_RANGE ->
                    flaw.count() / (double) (flaw.count() + moments);
                // a clock of whole seconds repeats itself, and a row may end where nothing more was read
                case REPEATED_TIME, ROW_TOO_SHORT, STUCK -> 0;
            };
            worst = Math.max(worst, share);
        }
        return worst * 100;
    }
}
