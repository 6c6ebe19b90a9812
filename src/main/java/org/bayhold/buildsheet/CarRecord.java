package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Correction;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.vehicle.Registration;

/**
 * Everything on record that a car's state follows from.
 *
 * @param facts in the order of the chain
 * @param revisions those that the facts cite, or that its ECU checks may show
 * @param corrections of the part specs that the facts name
 */
public record CarRecord(
        Registration registration,
        List<Fact> facts,
        List<Revision> revisions,
        EffectGroups groups,
        List<Correction> corrections) {
    public CarRecord {
        facts = List.copyOf(facts);
        revisions = List.copyOf(revisions);
        corrections = List.copyOf(corrections);
    }

    /** The car at {@code effectiveAt} as known at {@code knownAt}. */
    public CarState at(Instant effectiveAt, Instant knownAt) {
        return Fold.at(registration, facts, revisions, groups, effectiveAt, knownAt);
    }

    /** The same with other facts. */
    public CarRecord with(List<Fact> others) {
        return new CarRecord(registration, others, revisions, groups, corrections);
    }
}
