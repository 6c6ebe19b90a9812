package org.bayhold.buildsheet;

import org.jspecify.annotations.Nullable;

/**
 * A flash as typed.
 *
 * @param calibration the id of a revision, or {@link #NOT_OURS}
 */
record FlashForm(
        @Nullable String calibration,
        @Nullable String outcome,
        @Nullable String source,
        @Nullable String adaptationsReset,
        @Nullable String when,
        @Nullable String order,
        @Nullable String odometerKm,
        @Nullable String performedBy,
        @Nullable String note) {
    static final String NOT_OURS = "not-ours";
    static final FlashForm EMPTY = new FlashForm(null, null, null, null, null, null, null, null, null);
}
