package org.bayhold.buildsheet;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * When something happened, as typed into a page's field {@code when}. Pages take times to the minute; where the record of
 * the car has something else in that minute, the field {@code order} asks which came first. docs/rules.md, rule 9.
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

    /** The moment that was typed; null for now. Where the order is to be asked, that is noted in the form. */
    @Nullable Instant at(Form form, UUID vehicleId) {
        Instant minute = form.time("when");
        List<Tie> ties = ties(minute, vehicleId);
        if (minute == null || ties.isEmpty()) {
            return minute;
        }
        String order = form.value("order");
        if (order.equals(FIRST)) {
            Instant next = ties.get(0).at();
            return next.isAfter(minute) ? minute : minute.minus(1, ChronoUnit.MICROS);
        }
        for (Tie tie : ties) {
            if (tie.id().toString().equals(order)) {
                return tie.at().plus(1, ChronoUnit.MICROS);
            }
        }
        form.refused(Refusal.invalid("order", "when.which-first"));
        return minute;
    }

    /** What else happened in the minute that was typed, in order. */
    List<Tie> ties(Form form, UUID vehicleId) {
        return form.error("when") == null ? ties(form.time("when"), vehicleId) : List.of();
    }

    private List<Tie> ties(@Nullable Instant minute, UUID vehicleId) {
        if (minute == null) {
            return List.of();
        }
        Instant end = minute.plus(1, ChronoUnit.MINUTES);
        List<Fact> facts = records.of(vehicleId).facts();
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
                || fact instanceof DriveLogged
                || fact instanceof Fact.Inspected
                || fact instanceof Fact.Arrived
                || fact instanceof Fact.HandedOver;
    }
}
