package org.bayhold.gate;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/** Every version of the shop's policy, so that a decision is replayed under the one that held then. */
record Policies(List<Dated> versions) {
    /** A version with its two times. */
    record Dated(Policy policy, Instant effectiveAt, Instant recordedAt) {}

    Policies {
        versions = List.copyOf(versions);
    }

    Policy at(Instant effectiveAt, Instant knownAt) {
        return versions.stream()
                .filter(version -> !version.recordedAt().isAfter(knownAt))
                .filter(version -> !version.effectiveAt().isAfter(effectiveAt))
                .max(Comparator.comparing(Dated::effectiveAt).thenComparing(Dated::recordedAt))
                .map(Dated::policy)
                .orElse(Policy.DEFAULT);
    }
}
