package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One record of a car in words.
 *
 * @param struck who struck it out, when and why; null where it stands
 * @param strikable it stands, and is of a kind that can be struck out
 */
public record HistoryLine(
        UUID id,
        Instant at,
        String what,
        String detail,
        String by,
        @Nullable String struck,
        boolean strikable) {}
