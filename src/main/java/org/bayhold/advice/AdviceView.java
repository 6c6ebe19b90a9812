package org.bayhold.advice;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An answer as answered.
 *
 * @param letter to the customer, as plain text
 * @param letterUrl where it is as a PDF
 * @param planned when it became work to be done; null where it did not, or was dropped
 */
record AdviceView(
        UUID id,
        @Nullable UUID vehicleId,
        @JsonUnwrapped AdviceBody body,
        @Nullable String question,
        @Nullable String askedBy,
        String letter,
        String letterUrl,
        Instant recordedAt,
        String by,
        @Nullable Instant planned) {}
