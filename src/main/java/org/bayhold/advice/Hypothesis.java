package org.bayhold.advice;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/**
 * A car as it might be. No fact of it is recorded.
 *
 * @param vehicleId null for a car that is not in the register
 * @param engine as on record; null where it is not
 * @param before the car as it is
 * @param after the car with what is proposed
 * @param named the calibration that was asked about by name; empty for the one in the ECU
 */
record Hypothesis(
        @Nullable UUID vehicleId,
        @Nullable String engine,
        CarState before,
        CarState after,
        List<Proposal> proposals,
        Optional<Revision> named,
        EffectGroups groups) {
    Hypothesis {
        proposals = List.copyOf(proposals);
    }

    /** @param part null where none is named, or the catalogue does not know it */
    record Proposal(
            Place place,
            Action action,
            @Nullable PartSpec part,
            @Nullable String ecuHardware) {}

    /** The calibration that the car would run; empty for the factory's, and where nobody knows it. */
    Optional<Revision> revision() {
        return named.isPresent() ? named : after.revision();
    }

    /** Whether the calibration that was asked about is another than that in the ECU. */
    boolean needsAFlash() {
        return named.isPresent()
                && !named.map(Revision::id).equals(before.revision().map(Revision::id));
    }

    boolean hasEffect(Place place) {
        return groups.of(place.category(), after.effectiveAt(), after.knownAt()) != EffectGroup.NO_EFFECT;
    }

    /** Places with an effect of which nobody would know what sits there, in order. */
    List<Place> unknownPlaces() {
        return after.lines().stream()
                .filter(line -> line.hasEffect() && line.fitted().state() == Fitted.State.UNKNOWN)
                .map(line -> line.place())
                .toList();
    }

    boolean isProposed(Place place) {
        return proposals.stream().anyMatch(proposal -> proposal.place().equals(place));
    }

    /** The same part again. */
    boolean changesNothing(Proposal proposal) {
        return before.fittedAt(proposal.place()).equals(after.fittedAt(proposal.place()));
    }
}
