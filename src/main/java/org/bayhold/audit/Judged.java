package org.bayhold.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.bayhold.buildsheet.Fact;
import org.bayhold.gate.Decision;
import org.jspecify.annotations.Nullable;

/**
 * One handover held against the record.
 *
 * @param voided it is struck out: it never happened, and only what holds for good is found about it
 * @param knownThen the gate asked again, with what was on record when the handover was recorded
 * @param knownNow the gate at the time of the handover, with all that is on record now
 * @param returnedAt the next arrival; null while the car is out
 * @param unmatchedSince the first moment on the road without a matching calibration
 * @param matchedAgainAt the first moment after it with one, wherever the car was
 * @param unmatchedFor from {@code unmatchedSince} to the return, the match or now
 * @param stillSince from when the car, which is still out, has been without a match without a break; null where it is not
 */
record Judged(
        Fact.HandedOver handoff,
        boolean voided,
        Decision knownThen,
        Decision knownNow,
        Set<Finding> findings,
        @Nullable Instant returnedAt,
        @Nullable Instant unmatchedSince,
        @Nullable Instant matchedAgainAt,
        Duration unmatchedFor,
        @Nullable Instant stillSince) {
    Judged {
        findings = Set.copyOf(findings);
    }
}
