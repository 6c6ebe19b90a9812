package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Comparator;
import java.util.UUID;

/**
 * Identity, place in the record and the two times of one fact.
 *
 * @param seq position in the car's journal, from 1
 * @param effectiveAt when it happened
 * @param recordedAt when it was recorded: the server's time under the car's lock; the facts of one write share it, and
 *     each write is strictly later than the one before it
 * @param by the user who recorded it
 */
public record Stamp(UUID id, UUID vehicleId, long seq, Instant effectiveAt, Instant recordedAt, UUID by) {
    /** Facts of equal effective time stand in the order in which they were recorded. docs/rules.md, rule 9. */
    public static final Comparator<Stamp> IN_ORDER = Comparator.comparing(Stamp::effectiveAt)
            .thenComparing(Stamp::recordedAt)
            .thenComparingLong(Stamp::seq);
}
