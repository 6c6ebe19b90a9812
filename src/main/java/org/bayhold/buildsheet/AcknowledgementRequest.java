package org.bayhold.buildsheet;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.bayhold.buildsheet.Fact.Usage;
import org.jspecify.annotations.Nullable;

/** A customer's acknowledgement to record. */
record AcknowledgementRequest(
        @Nullable @Size(max = 8000) String text,
        @NotNull Usage usage,
        @NotBlank @Size(max = 200) String signedBy,
        @Nullable Instant effectiveAt)
        implements FactRequest {}
