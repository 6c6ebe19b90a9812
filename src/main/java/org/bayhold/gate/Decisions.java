package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.KnownRecord;
import org.bayhold.buildsheet.ManyCars;
import org.bayhold.journal.Snapshots;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The gate's decision on a car of the record. */
@Component
class Decisions {
    private final CarRecords records;
    private final PolicyBook policyBook;
    private final Predicting predicting;
    private final Snapshots snapshots;
    private final ManyCars manyCars;
    private final Clock clock;

    Decisions(
            CarRecords records,
            PolicyBook policyBook,
            Predicting predicting,
            Snapshots snapshots,
            ManyCars manyCars,
            Clock clock) {
        this.records = records;
        this.policyBook = policyBook;
        this.predicting = predicting;
        this.snapshots = snapshots;
        this.manyCars = manyCars;
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
        return of(replay(), record, effectiveAt, knownAt);
    }

    private Decision of(Replay replay, CarRecord record, Instant effectiveAt, Instant knownAt) {
        Question question = replay.question(record, record.at(effectiveAt, knownAt));
        return predicted(question, Gate.decide(question));
    }

    /**
     * On several cars as they stand now, all read at one moment and from their typed columns (docs/decisions/0011); by car,
     * an unknown one is left out. What people said in their own words is not in them.
     */
    Map<UUID, Decision> ofEach(Collection<UUID> vehicleIds) {
        return snapshots.read(() -> {
            Replay replay = replay();
            Map<UUID, Decision> decisions = new HashMap<>();
            for (KnownRecord car : manyCars.reader().of(vehicleIds)) {
                AsOf now = AsOf.of(car.record(), clock, null, null);
                UUID id = car.record().registration().vehicleId();
                decisions.put(id, of(replay, car.record(), now.effectiveAt(), now.knownAt()));
            }
            return decisions;
        });
    }

    /** The decision on a car that is to leave, or left, at {@code at}, on the record as it stands now. */
    Decision atTheDoor(CarRecord record, Instant at, Instant now) {
        Replay replay = replay();
        Decision decision = replay.atTheDoor(record, at, now, Gate.RULES);
        return predicted(replay.question(record, decision.car()), decision);
    }

    /** After the verdict, which no prediction can change; a prediction that cannot be made leaves the groups' risk. */
    private Decision predicted(Question question, Decision decision) {
        return predicting
                .of(decision)
                .map(prediction -> decision.predicted(prediction, Risks.of(question, decision.failed(), prediction)))
                .orElse(decision);
    }

    Question question(CarRecord record, Instant effectiveAt, Instant knownAt) {
        return replay().question(record, record.at(effectiveAt, knownAt));
    }

    private Replay replay() {
        return new Replay(policyBook.policies());
    }
}
