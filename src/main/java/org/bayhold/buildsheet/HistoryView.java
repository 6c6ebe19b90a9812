package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One record of a car's history as answered.
 *
 * @param voided it was struck out
 * @param voiding who struck it out, when and why; null where it stands
 * @param record the record's own fields
 */
public record HistoryView(
        UUID id,
        String kind,
        long seq,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        boolean voided,
        @Nullable Voiding voiding,
        JsonNode record) {

    /** How a record was struck out. */
    public record Voiding(
            UUID id,
            Instant at,
            String by,
            @Nullable String reason,
            @Nullable UUID replacedBy) {}
}
