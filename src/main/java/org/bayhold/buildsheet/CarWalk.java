package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.CategoryMove;
import org.jspecify.annotations.Nullable;

/**
 * One car as known at one time, walked through from moment to moment: each fact is applied once, where {@link Fold} would
 * begin anew for every moment. Where it stops, the car is as {@link Fold#at} has it. Pure.
 */
public final class CarWalk {
    private final CarRecord record;
    private final Instant knownAt;
    private final List<Fact> known;
    private final Set<UUID> voided;
    private final List<Fact> live;
    private @Nullable FoldingCar car;
    private Instant at = Instant.MIN;
    private int next;

    public CarWalk(CarRecord record, Instant knownAt) {
        this.record = record;
        this.knownAt = knownAt;
        this.known = LiveFacts.knownAt(record.facts(), knownAt);
        this.voided = LiveFacts.voided(known);
        this.live = LiveFacts.live(known, voided, Instant.MAX);
    }

    /** What is known, in the order of recording. */
    public List<Fact> known() {
        return known;
    }

    /** What is known and not struck out, in the order of rule 9. */
    public List<Fact> live() {
        return live;
    }

    public boolean isStruckOut(Fact fact) {
        return voided.contains(fact.stamp().id());
    }

    /** The moments at which the car, or what its parts and its revisions count for, may become something else. */
    public NavigableSet<Instant> moments() {
        NavigableSet<Instant> moments = new TreeSet<>();
        live.forEach(fact -> moments.add(fact.stamp().effectiveAt()));
        record.revisions().stream()
                .map(Revision::withdrawnAt)
                .flatMap(Stream::ofNullable)
                .filter(withdrawn -> !withdrawn.isAfter(knownAt))
                .forEach(moments::add);
        moves().map(CategoryMove::effectiveAt).forEach(moments::add);
        return moments;
    }

    /** The car at {@code moment}; quick where the moments asked for rise. */
    public CarState to(Instant moment) {
        FoldingCar folding = car;
        if (folding == null || moment.isBefore(at) || movedBetween(at, moment)) {
            // a move of a category counts for every change on record, older ones too
            folding = new FoldingCar(record.registration(), record.revisions(), record.groups(), moment, knownAt);
            car = folding;
            next = 0;
        }
        at = moment;
        while (next < live.size() && !live.get(next).stamp().effectiveAt().isAfter(moment)) {
            live.get(next).tell(folding);
            next++;
        }
        return folding.state(moment, OpenItems.at(known, voided, moment));
    }

    private boolean movedBetween(Instant earlier, Instant later) {
        return moves().anyMatch(move ->
                move.effectiveAt().isAfter(earlier) && !move.effectiveAt().isAfter(later));
    }

    private Stream<CategoryMove> moves() {
        return record.groups().moves().stream()
                .filter(move -> !move.recordedAt().isAfter(knownAt));
    }
}
