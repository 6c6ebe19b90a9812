package org.bayhold.calibration;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One map of a revision to issue.
 *
 * @param fuels part specs of the category FUEL; none, and not the factory's either: every fuel that the revision covers
 */
record MapRequest(
        @NotBlank @Size(max = 60) String name,
        @Nullable @Size(max = 50) List<@NotNull UUID> fuels,
        @Nullable Boolean factoryFuel,
        @Nullable @Size(max = 500) String note) {
    /** How many maps a revision may have. */
    static final int MOST = 20;
}
