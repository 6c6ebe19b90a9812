package org.bayhold.gate;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import org.jspecify.annotations.Nullable;

/** What to change of the policy; what is left out stays. */
record PolicyRequest(
        @Nullable Boolean readBackRequired,
        @Nullable @Min(1) @Max(8760) Integer readBackMaxAgeHours,
        @Nullable Boolean troubleCodesChecked,
        @Nullable Boolean driveLogRequired,
        @Nullable Boolean acknowledgementRequired,
        @Nullable Boolean secondPersonRequired) {}
