package org.bayhold.journal;

import java.time.Instant;
import java.util.UUID;
import tools.jackson.databind.JsonNode;

/**
 * One entry of a chain, as it is hashed.
 *
 * @param seq from 1, without gaps
 * @param id the record's own id
 * @param record what was recorded, personal data left out
 * @param prev the hash of the entry before it, or 64 zeros
 */
public record Entry(
        UUID chain,
        long seq,
        UUID id,
        String kind,
        Instant effectiveAt,
        Instant recordedAt,
        UUID by,
        JsonNode record,
        String prev) {}
