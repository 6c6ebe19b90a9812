package org.bayhold.audit;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.gate.Check;
import org.bayhold.gate.Decision;
import org.jspecify.annotations.Nullable;

/**
 * One row of the audit.
 *
 * @param decidedThen what was decided, as stored with the handover
 * @param failedThen the checks that failed in it
 * @param knownThen the gate asked again, with what was on record when the handover was recorded
 * @param knownNow the gate at the time of the handover, with all that is on record now
 * @param unmatchedSince the first moment on the road without a matching calibration
 * @param matchedAgainAt the first moment after it with one, wherever the car was
 * @param daysUnmatched days of 24 hours, to two places, from {@code unmatchedSince} to the return, the match or now
 * @param stillUnmatchedSince from when the car, which is still out, has been without a match without a break; null where
 *     it is back, or matches
 * @param returnedAt the next arrival; null while the car is out
 * @param voided the handover is struck out
 */
public record AuditedHandoff(
        UUID handoffId,
        Vehicle vehicle,
        Instant handedOffAt,
        Instant recordedAt,
        Fact.HandoffBasis basis,
        Decision.Verdict decidedThen,
        List<Check> failedThen,
        Decision.Verdict knownThen,
        List<Check> failedKnownThen,
        Decision.Verdict knownNow,
        List<Check> failedKnownNow,
        List<Finding> findings,
        @Nullable Instant unmatchedSince,
        @Nullable Instant matchedAgainAt,
        BigDecimal daysUnmatched,
        @Nullable Instant stillUnmatchedSince,
        @Nullable Instant returnedAt,
        boolean voided,
        String handedOffBy) {

    /** The car, by what people call it now. */
    public record Vehicle(
            UUID id,
            @Nullable String vin,
            @Nullable String frameNumber,
            @Nullable String plate,
            String description) {}
}
