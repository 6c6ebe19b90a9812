package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.catalog.Correction;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The gate's decision on a car of the record. */
@Component
class Decisions {
    private final CarRecords records;
    private final PolicyBook policyBook;
    private final Clock clock;

    Decisions(CarRecords records, PolicyBook policyBook, Clock clock) {
        this.records = records;
        this.policyBook = policyBook;
        this.clock = clock;
    }

    /** As asked from outside a write; a time left out means now. */
    @Transactional(readOnly = true)
    public Decision of(UUID vehicleId, @Nullable Instant effectiveAt, @Nullable Instant knownAt) {
        CarRecord record = records.of(vehicleId);
        AsOf asOf = AsOf.of(record, clock, effectiveAt, knownAt);
        return of(record, asOf.effectiveAt(), asOf.knownAt());
    }

    Decision of(CarRecord record, Instant effectiveAt, Instant knownAt) {
        return Gate.decide(question(record, effectiveAt, knownAt));
    }

    Question question(CarRecord record, Instant effectiveAt, Instant knownAt) {
        CarState car = record.at(effectiveAt, knownAt);
        return new Question(
                car, policyBook.policies().at(effectiveAt, knownAt), record.groups(), unanswered(record, car));
    }

    /** Corrections of parts that the car carried before they were corrected, for which its item has no cause yet. */
    static List<Correction> unanswered(CarRecord record, CarState car) {
        Set<UUID> answered = new HashSet<>();
        for (Fact fact : record.facts()) {
            if (!fact.stamp().recordedAt().isAfter(car.knownAt())) {
                Causes.told(fact).forEach(cause -> answered.add(cause.recordId()));
            }
        }
        return record.corrections().stream()
                .filter(correction -> !correction.recordedAt().isAfter(car.knownAt()))
                .filter(correction -> !correction.recordedAt().isAfter(car.effectiveAt()))
                .filter(correction -> !answered.contains(correction.id()))
                .filter(correction -> car.lines().stream()
                        .anyMatch(line -> line.hasEffect()
                                && correction.partSpecId().equals(line.fitted().partSpecId())
                                && line.knownSince() != null
                                && line.knownSince().isBefore(correction.recordedAt())))
                .toList();
    }
}
