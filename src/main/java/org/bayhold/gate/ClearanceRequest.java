package org.bayhold.gate;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.bayhold.buildsheet.Fact.ClearanceBasis;
import org.jspecify.annotations.Nullable;

/** On what basis an item is signed off. */
record ClearanceRequest(
        @NotNull ClearanceBasis basis,
        @Nullable @Size(max = 2000) String note) {}
