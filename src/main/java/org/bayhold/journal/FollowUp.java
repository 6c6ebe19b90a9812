package org.bayhold.journal;

import java.util.UUID;

/**
 * Work that a write leaves to be done car by car, in transactions of their own; doing it twice does no harm.
 *
 * @param subjectId the revision, the correction or the move that it follows from
 */
public record FollowUp(UUID id, Kind kind, UUID subjectId, UUID askedBy) {
    /** What the work follows from. */
    public enum Kind {
        WITHDRAWAL,
        CORRECTION,
        CATEGORY_MOVE
    }
}
