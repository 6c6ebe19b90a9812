package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.vehicle.Registration;

/** Everything that is on record of one car, as a fold wants it. */
public record MadeCar(Registration registration, List<Fact> facts, List<Revision> revisions, EffectGroups groups) {
    public MadeCar {
        facts = List.copyOf(facts);
    }

    MadeCar with(List<Fact> other) {
        return new MadeCar(registration, other, revisions, groups);
    }

    public Instant lastRecordedAt() {
        return facts.stream()
                .map(fact -> fact.stamp().recordedAt())
                .max(Instant::compareTo)
                .orElse(registration.recordedAt());
    }

    /** As the car stood when the last fact was recorded, with all that is on record. */
    public CarState state() {
        return stateAt(lastRecordedAt());
    }

    /** As the car stood at {@code effectiveAt}, with all that is on record. */
    public CarState stateAt(String effectiveAt) {
        return stateAt(Instant.parse(effectiveAt));
    }

    private CarState stateAt(Instant effectiveAt) {
        return stateAt(effectiveAt, lastRecordedAt());
    }

    public CarState stateAt(String effectiveAt, String knownAt) {
        return stateAt(Instant.parse(effectiveAt), Instant.parse(knownAt));
    }

    public CarState stateAt(Instant effectiveAt, Instant knownAt) {
        return Fold.at(registration, facts, revisions, groups, effectiveAt, knownAt);
    }

    /** What sits now at the main place of {@code category}. */
    public Fitted at(Category category) {
        return state().fittedAt(Place.of(category));
    }
}
