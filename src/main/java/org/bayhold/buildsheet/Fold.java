package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.vehicle.Registration;

/** From dated facts to the state of a car, for any two times. Pure: it reads no clock and no database. */
public final class Fold {
    private Fold() {}

    /**
     * @param facts every fact of one car, in any order
     * @param revisions at least the revisions that the facts cite or that an ECU check may show, in any order
     * @param groups the effect groups with all their moves
     * @param effectiveAt the moment that is asked about; later facts change nothing
     * @param knownAt what was recorded after this moment changes nothing
     * @throws IllegalArgumentException when a fact cites a revision that is not among {@code revisions}
     */
    public static CarState at(
            Registration registration,
            List<Fact> facts,
            List<Revision> revisions,
            EffectGroups groups,
            Instant effectiveAt,
            Instant knownAt) {
        List<Fact> known = LiveFacts.knownAt(facts, knownAt);
        Set<UUID> voided = LiveFacts.voided(known);
        FoldingCar car = new FoldingCar(registration, revisions, groups, effectiveAt, knownAt);
        LiveFacts.live(known, voided, effectiveAt).forEach(fact -> fact.tell(car));
        return car.state(effectiveAt, OpenItems.at(known, voided, effectiveAt));
    }

    /** The ids of the facts that are struck out, as known at {@code knownAt}. */
    public static Set<UUID> voided(List<Fact> facts, Instant knownAt) {
        return LiveFacts.voided(LiveFacts.knownAt(facts, knownAt));
    }
}
