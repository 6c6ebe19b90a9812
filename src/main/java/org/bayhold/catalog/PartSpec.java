package org.bayhold.catalog;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One part of the catalogue, with its attributes as last corrected.
 *
 * @param attributes by name, with the unit in the name
 * @param supersedes the part that came before in its maker's list: a link for whoever searches, never coverage
 * @param correctedAt when the attributes were last corrected; null where never
 */
public record PartSpec(
        UUID id,
        Category category,
        String maker,
        String partNumber,
        String specRevision,
        Map<String, Object> attributes,
        @Nullable String complianceNote,
        @Nullable UUID supersedes,
        Instant recordedAt,
        @Nullable Instant correctedAt) {

    /** As people name it: maker, part number, revision. */
    public String name() {
        return maker + " " + partNumber + " · " + specRevision;
    }
}
