package org.bayhold.gate;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.bayhold.buildsheet.Fact;
import org.jspecify.annotations.Nullable;

/** On what basis an item is signed off. */
record ClearanceRequest(
        Fact.@NotNull ClearanceBasis basis,
        @Nullable @Size(max = 2000) String note) {}
