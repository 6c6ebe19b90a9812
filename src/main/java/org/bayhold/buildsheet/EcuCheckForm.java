package org.bayhold.buildsheet;

import org.jspecify.annotations.Nullable;

/** What an ECU reports, as typed or pasted. */
record EcuCheckForm(
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        @Nullable String response,
        @Nullable String when,
        @Nullable String order,
        @Nullable String performedBy,
        @Nullable String note) {
    static final EcuCheckForm EMPTY = new EcuCheckForm(null, null, null, null, null, null, null, null);
}
