package org.bayhold.gate;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One place: what is fitted, beside what the calibration in the car was written for.
 *
 * @param why the sentence that says why the two do not agree; null where they do
 * @param since when it came to be fitted; null for the baseline
 * @param usual the factory part is fitted, and was calibrated for
 */
record BesideLine(
        String place,
        String fitted,
        String calibratedFor,
        @Nullable String why,
        @Nullable Instant since,
        boolean usual) {
    public boolean differs() {
        return why != null;
    }
}
