package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Odometer readings, in km, as they came with facts. One that runs backwards is odd, and recorded all the same. */
final class Odometer {
    private Odometer() {}

    private record At(Stamp stamp, int km) {}

    /** The reading of the latest fact that has one. */
    static @Nullable Integer last(List<Fact> facts) {
        return readings(facts)
                .max(Comparator.comparing(At::stamp, Stamp.IN_ORDER))
                .map(At::km)
                .orElse(null);
    }

    /** Less than an earlier reading, or more than a later one. */
    static boolean runsBackwards(List<Fact> facts, Instant effectiveAt, int km, @Nullable Integer registeredKm) {
        Optional<At> before = readings(facts)
                .filter(at -> !at.stamp().effectiveAt().isAfter(effectiveAt))
                .max(Comparator.comparing(At::stamp, Stamp.IN_ORDER));
        Optional<At> after = readings(facts)
                .filter(at -> at.stamp().effectiveAt().isAfter(effectiveAt))
                .min(Comparator.comparing(At::stamp, Stamp.IN_ORDER));
        Integer earlier = before.map(At::km).orElse(registeredKm);
        return (earlier != null && km < earlier)
                || after.filter(at -> at.km() < km).isPresent();
    }

    private static Stream<At> readings(List<Fact> facts) {
        return facts.stream().flatMap(fact -> {
            Integer km = km(fact);
            return km == null ? Stream.empty() : Stream.of(new At(fact.stamp(), km));
        });
    }

    private static @Nullable Integer km(Fact fact) {
        if (fact instanceof Fact.Arrived arrived) {
            return arrived.odometerKm();
        }
        if (fact instanceof Fact.PartChanged change) {
            return change.odometerKm();
        }
        if (fact instanceof Fact.Inspected inspection) {
            return inspection.odometerKm();
        }
        if (fact instanceof Fact.Flashed flash) {
            return flash.odometerKm();
        }
        return fact instanceof Fact.HandedOver handoff ? handoff.odometerKm() : null;
    }
}
