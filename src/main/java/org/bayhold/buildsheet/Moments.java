package org.bayhold.buildsheet;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.form.Typed;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * When something happened, as typed into a page. A page takes times to the minute; where the record of the car has
 * something else in that minute, the person is asked which came first. docs/rules.md, rule 9.
 */
@Component
class Moments {
    /** The answer of who says that it came before everything else in that minute. */
    static final String FIRST = "first";

    private final CarRecords records;

    Moments(CarRecords records) {
        this.records = records;
    }

    /** Another fact of the same minute. */
    record Tie(UUID id, String kind, Instant at) {}

    /** @param at null means now */
    record Moment(@Nullable Instant at, List<Tie> ties) {}

    /** @param order what was answered: {@link #FIRST}, the id of the fact that it came after, or nothing yet */
    Moment of(Typed typed, UUID vehicleId, String when, String order) {
        Instant minute = typed.time("when", when);
        if (minute == null) {
            return new Moment(null, List.of());
        }
        List<Tie> ties = inTheMinuteOf(minute, records.of(vehicleId).facts());
        if (ties.isEmpty()) {
            return new Moment(minute, ties);
        }
        if (order.equals(FIRST)) {
            Instant next = ties.get(0).at();
            return new Moment(next.isAfter(minute) ? minute : minute.minus(1, ChronoUnit.MICROS), ties);
        }
        for (Tie tie : ties) {
            if (tie.id().toString().equals(order)) {
                return new Moment(tie.at().plus(1, ChronoUnit.MICROS), ties);
            }
        }
        typed.wrong("order", "when.which-first");
        return new Moment(minute, ties);
    }

    private static List<Tie> inTheMinuteOf(Instant minute, List<Fact> facts) {
        Instant end = minute.plus(1, ChronoUnit.MINUTES);
        Set<UUID> voided = LiveFacts.voided(facts);
        return facts.stream()
                .filter(fact -> !voided.contains(fact.stamp().id()))
                .filter(Moments::happensToTheCar)
                .filter(fact -> !fact.stamp().effectiveAt().isBefore(minute))
                .filter(fact -> fact.stamp().effectiveAt().isBefore(end))
                .sorted(Comparator.comparing((Fact fact) -> fact.stamp().effectiveAt())
                        .thenComparing(fact -> fact.stamp().seq()))
                .map(fact -> new Tie(
                        fact.stamp().id(), FactKinds.of(fact), fact.stamp().effectiveAt()))
                .toList();
    }

    private static boolean happensToTheCar(Fact fact) {
        return fact instanceof Fact.PartChanged
                || fact instanceof Fact.Flashed
                || fact instanceof Fact.ReadBack
                || fact instanceof Fact.Inspected
                || fact instanceof Fact.Arrived
                || fact instanceof Fact.HandedOver;
    }
}
