package org.bayhold.gate;

import org.jspecify.annotations.Nullable;

/** A handover as typed; what belongs to an exception is empty where none is asked for. */
record HandOverForm(
        @Nullable String when,
        @Nullable String odometerKm,
        @Nullable String reason,
        @Nullable String travel,
        @Nullable String acknowledgedBy,
        @Nullable String limitations,
        @Nullable String returnBy,
        @Nullable String secondName) {
    static final HandOverForm EMPTY = new HandOverForm(null, null, null, null, null, null, null, null);
}
