package org.bayhold.audit;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which handovers an audit is about; what is null or empty leaves none out.
 *
 * @param from the first moment of the period
 * @param to the first moment after it
 * @param findings at least one of them was found
 * @param person the user name of whoever recorded the handover
 * @param unmatched whether the car is still out without a matching calibration
 * @param after the handover that the answer goes on after
 * @param limit the most handovers to tell; null for all
 * @param knownAt the moment whose knowledge counts as that of now, and as now
 */
public record AuditQuestion(
        @Nullable Instant from,
        @Nullable Instant to,
        Set<Finding> findings,
        @Nullable String site,
        @Nullable String person,
        @Nullable Boolean unmatched,
        @Nullable UUID after,
        @Nullable Integer limit,
        @Nullable Instant knownAt) {
    /** Every handover on record. */
    public static final AuditQuestion ALL = new AuditQuestion(null, null, Set.of(), null, null, null, null, null, null);

    public AuditQuestion {
        findings = Set.copyOf(findings);
    }

    /** Only the cars that are still out without a matching calibration. */
    public static AuditQuestion stillUnmatched() {
        return new AuditQuestion(null, null, Set.of(), null, null, true, null, null, null);
    }

    boolean wants(AuditedHandoff row) {
        return (findings.isEmpty() || row.findings().stream().anyMatch(findings::contains))
                && (unmatched == null || unmatched == (row.stillUnmatchedSince() != null));
    }
}
