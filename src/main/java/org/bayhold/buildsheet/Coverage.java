package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;

/** Whether a revision was written for exactly what is on a car. docs/rules.md, rule 3. */
public final class Coverage {
    private Coverage() {}

    /** A place where the car is not what the revision was written for. */
    public record Gap(Place place, EffectGroup group, Fitted fitted, Optional<CoverageLine> calibratedFor, Why why) {}

    /** Why a place is not covered. */
    public enum Why {
        PART_NOT_COVERED,
        FACTORY_NOT_COVERED,
        NONE_NOT_COVERED,
        UNKNOWN_NEVER_COVERED
    }

    /** The places with an effect that {@code revision} does not cover, in order; empty when it covers the whole build sheet. */
    public static List<Gap> gaps(CarState car, Revision revision, EffectGroups groups) {
        return gaps(car, revision.coverage(), groups);
    }

    /** @param revision empty for the factory's calibration, or where nobody knows it */
    public static List<Gap> gaps(CarState car, Optional<Revision> revision, EffectGroups groups) {
        return revision.map(known -> gaps(car, known, groups)).orElseGet(() -> gapsToFactory(car, groups));
    }

    /** The places that differ from a car with factory parts throughout. */
    public static List<Gap> gapsToFactory(CarState car, EffectGroups groups) {
        return gaps(car, List.of(), groups);
    }

    private static List<Gap> gaps(CarState car, List<CoverageLine> coverage, EffectGroups groups) {
        Map<Place, CoverageLine> named = new HashMap<>();
        coverage.forEach(line -> named.put(line.place(), line));
        List<Gap> gaps = new ArrayList<>();
        for (BuildLine line : car.lines()) {
            Optional<CoverageLine> calibratedFor = Optional.ofNullable(named.remove(line.place()));
            gap(car, line.place(), line.fitted(), calibratedFor, groups).ifPresent(gaps::add);
        }
        // what the revision names and the record does not is as the baseline says
        named.forEach((place, line) ->
                gap(car, place, car.baselineFitted(), Optional.of(line), groups).ifPresent(gaps::add));
        gaps.sort(Comparator.comparing(Gap::place));
        return gaps;
    }

    private static Optional<Gap> gap(
            CarState car, Place place, Fitted fitted, Optional<CoverageLine> calibratedFor, EffectGroups groups) {
        if (covers(calibratedFor, fitted)) {
            return Optional.empty();
        }
        EffectGroup group = groups.of(place.category(), car.effectiveAt(), car.knownAt());
        return group == EffectGroup.NO_EFFECT
                ? Optional.empty()
                : Optional.of(new Gap(place, group, fitted, calibratedFor, why(fitted)));
    }

    /** Whether what a revision says of a place (nothing: factory part) allows what is fitted there. */
    static boolean covers(Optional<CoverageLine> line, Fitted fitted) {
        return switch (fitted.state()) {
            case PART ->
                line.filter(l -> l.partSpecIds().contains(fitted.partSpecId())).isPresent();
            case FACTORY -> line.map(CoverageLine::factoryAllowed).orElse(true);
            case NONE -> line.map(CoverageLine::noneAllowed).orElse(false);
            case UNKNOWN -> false;
        };
    }

    private static Why why(Fitted fitted) {
        return switch (fitted.state()) {
            case PART -> Why.PART_NOT_COVERED;
            case FACTORY -> Why.FACTORY_NOT_COVERED;
            case NONE -> Why.NONE_NOT_COVERED;
            case UNKNOWN -> Why.UNKNOWN_NEVER_COVERED;
        };
    }
}
