package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/** What of a record counts at a moment: known by then, not struck out, in the order of rule 9. */
final class LiveFacts {
    private static final Comparator<Fact> IN_ORDER = Comparator.comparing(Fact::stamp, Stamp.IN_ORDER);

    private LiveFacts() {}

    /** In the order of recording, in whichever order they are given. */
    static List<Fact> knownAt(List<Fact> facts, Instant knownAt) {
        return facts.stream()
                .filter(fact -> !fact.stamp().recordedAt().isAfter(knownAt))
                .sorted(Comparator.comparing(fact -> fact.stamp().seq()))
                .toList();
    }

    /**
     * The ids that are struck out. A striking-out may itself be struck out, always by a later one, so the last recorded
     * decides first.
     */
    static Set<UUID> voided(List<Fact> known) {
        Set<UUID> voided = new HashSet<>();
        known.stream()
                .filter(Fact.Voided.class::isInstance)
                .map(Fact.Voided.class::cast)
                .sorted(Comparator.comparingLong(
                                (Fact.Voided fact) -> fact.stamp().seq())
                        .reversed())
                .filter(fact -> !voided.contains(fact.stamp().id()))
                .forEach(fact -> voided.add(fact.targetId()));
        return voided;
    }

    static List<Fact> live(List<Fact> known, Set<UUID> voided, Instant effectiveAt) {
        return known.stream()
                .filter(fact -> !fact.stamp().effectiveAt().isAfter(effectiveAt))
                .filter(fact -> !voided.contains(fact.stamp().id()))
                .sorted(IN_ORDER)
                .toList();
    }
}
