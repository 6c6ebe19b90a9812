package org.bayhold.advice;

import java.util.UUID;
import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** What the journal says of an answer. */
record AdviceGiven(
        @Nullable UUID vehicleId,
        AdviceBody body,
        @Nullable Personal question,
        @Nullable Personal askedBy) {}
