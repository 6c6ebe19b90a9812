package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A striking-out as answered.
 *
 * @param id the striking-out's own id: it can be struck out as well
 * @param replacement the right record, as its own call would have answered
 * @param retuneItemId the item that is open because of it; null where there is none
 */
record VoidingView(
        UUID id,
        UUID voidedId,
        String voidedKind,
        UUID vehicleId,
        Instant recordedAt,
        String by,
        String reason,
        @Nullable UUID replacedBy,
        @Nullable JsonNode replacement,
        @Nullable UUID retuneItemId) {}
