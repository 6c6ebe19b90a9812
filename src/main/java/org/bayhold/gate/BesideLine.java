package org.bayhold.gate;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One place: what is fitted, beside what the calibration in the car was written for.
 *
 * @param why the sentence that says why the two do not agree; null where they do
 * @param figure what the part alone does to lambda; null where nothing differs, or nobody can compute it
 * @param since when it came to be fitted; null for the baseline
 * @param usual the factory part is fitted, and was calibrated for
 * @param unseen nobody has said yet what is fitted, and no calibration names the place
 */
record BesideLine(
        String place,
        String fitted,
        String calibratedFor,
        @Nullable String why,
        @Nullable String figure,
        @Nullable Instant since,
        boolean usual,
        boolean unseen) {
    public boolean differs() {
        return why != null;
    }
}
