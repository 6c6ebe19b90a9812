package org.bayhold.calibration;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One map of a revision as answered. */
record MapView(
        String name,
        List<UUID> fuels,
        boolean factoryFuel,
        @Nullable String note) {}
