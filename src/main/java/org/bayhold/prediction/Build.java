package org.bayhold.prediction;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/**
 * A car as it stands against its calibration.
 *
 * @param seats every place that is known, those that match as well: their parts take part in the arithmetic
 * @param assumes what the revision assumes, {@link Assumptions}
 * @param boostTargetKpa absolute; null where the revision gives none
 * @param cylinders null where not on record
 */
public record Build(
        List<Seat> seats,
        Map<String, Object> assumes,
        @Nullable Double boostTargetKpa,
        @Nullable Integer cylinders) {
    public Build {
        seats = List.copyOf(seats);
        assumes = Side.recorded(assumes);
    }

    List<Seat> differing() {
        return seats.stream()
                .filter(seat -> seat.differs() && seat.group() != EffectGroup.NO_EFFECT)
                .toList();
    }

    /** The places of a category at which anything sits on either side. */
    List<Seat> of(Category category) {
        return seats.stream()
                .filter(seat -> seat.category() == category)
                .filter(seat ->
                        !seat.fitted().isEmpty() || !seat.calibratedFor().isEmpty())
                .toList();
    }

    Optional<Seat> at(Place place) {
        return seats.stream().filter(seat -> seat.place().equals(place)).findFirst();
    }
}
