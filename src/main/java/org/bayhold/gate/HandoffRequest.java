package org.bayhold.gate;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.bayhold.buildsheet.Fact.Travel;
import org.jspecify.annotations.Nullable;

/** A handover to record. */
record HandoffRequest(
        @Nullable Instant effectiveAt,
        @Nullable @Min(0) @Max(9_999_999) Integer odometerKm,
        @Nullable @Valid ExceptionRequest exception) {

    /**
     * A manager's release of a car on HOLD.
     *
     * @param secondSignerToken a signing token of a second manager or of a calibrator: asked for where the risk is
     *     EXTREME and the car is driven
     */
    record ExceptionRequest(
            @NotBlank @Size(max = 2000) String reason,
            @NotNull Travel travel,
            @NotBlank @Size(max = 200) String acknowledgedBy,
            @Nullable @Size(max = 2000) String limitations,
            @Nullable Instant returnBy,
            @Nullable @Size(max = 200) String secondSignerToken) {}
}
