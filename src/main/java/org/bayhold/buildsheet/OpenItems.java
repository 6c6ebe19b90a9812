package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Which retune item is open for any two times. An item is open from the moment from which a cause of it holds until it
 * is signed off; one that lapsed was never rightly open; a closed item is never reopened, so a sign-off counts as the
 * item's end even when it was struck out later (that opens another item). docs/rules.md, rules 4 and 7.
 */
final class OpenItems {
    private OpenItems() {}

    static Optional<CarState.OpenItem> at(List<Fact> known, Set<UUID> voided, Instant effectiveAt) {
        Map<UUID, List<Cause>> causes = new LinkedHashMap<>();
        Set<UUID> closed = new HashSet<>();
        for (Fact fact : known) {
            if (fact instanceof Fact.RetuneOpened opened) {
                causes.computeIfAbsent(opened.itemId(), id -> new ArrayList<>()).addAll(opened.causes());
            } else if (fact instanceof Fact.RetuneJoined joined) {
                causes.computeIfAbsent(joined.itemId(), id -> new ArrayList<>()).addAll(joined.causes());
            } else if (fact instanceof Fact.RetuneLapsed lapsed) {
                closed.add(lapsed.itemId());
            } else if (fact instanceof Fact.Cleared cleared
                    && !cleared.stamp().effectiveAt().isAfter(effectiveAt)) {
                closed.add(cleared.itemId());
            }
        }
        return causes.entrySet().stream()
                .filter(item -> !closed.contains(item.getKey()))
                .filter(item -> holdsAt(item.getValue(), voided, effectiveAt))
                .map(item -> new CarState.OpenItem(item.getKey(), List.copyOf(item.getValue())))
                .reduce((earlier, later) -> later);
    }

    /** Causes that still stand decide; where every one is struck out, the item waits to lapse and all of them do. */
    private static boolean holdsAt(Collection<Cause> causes, Set<UUID> voided, Instant effectiveAt) {
        List<Cause> standing = causes.stream()
                .filter(cause -> !voided.contains(cause.recordId()))
                .toList();
        return (standing.isEmpty() ? causes : standing)
                .stream().anyMatch(cause -> !cause.effectiveAt().isAfter(effectiveAt));
    }
}
