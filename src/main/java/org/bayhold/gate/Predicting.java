package org.bayhold.gate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.buildsheet.BuildLine;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.calibration.Assumed;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Predictions;
import org.bayhold.prediction.Seat;
import org.bayhold.prediction.Side;
import org.bayhold.vehicle.Vehicles;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** What the mismatches of a car do, from the attributes that the catalogue had at the moment that is asked about. */
@Component
class Predicting {
    private static final Logger LOG = LoggerFactory.getLogger(Predicting.class);

    private final Catalog catalog;
    private final Calibrations calibrations;
    private final Vehicles vehicles;

    Predicting(Catalog catalog, Calibrations calibrations, Vehicles vehicles) {
        this.catalog = catalog;
        this.calibrations = calibrations;
        this.vehicles = vehicles;
    }

    /** Empty where nothing differs. {@code docs/prediction.md}. */
    Optional<Prediction> of(Decision decision) {
        return decision.mismatches().isEmpty() ? Optional.empty() : predicted(build(decision));
    }

    /** The car of a decision against its calibration, place by place. */
    Build build(Decision decision) {
        return build(decision.car(), decision.car().revision(), decision.mismatches());
    }

    /** The car against a calibration: that in its ECU, or another one that somebody asks about. */
    Build build(CarState car, Optional<Revision> revision, List<Gap> gaps) {
        Assumed assumed =
                revision.flatMap(known -> calibrations.assumed(known.id())).orElse(Assumed.NOTHING);
        return new Build(
                seats(car, revision, gaps),
                assumed.assumes(),
                assumed.boostTargetKpa(),
                vehicles.cylinders(car.registration().vehicleId()).orElse(null));
    }

    /** Arithmetic that fails must not keep a fact from being recorded; the risk is then that of the effect groups. */
    static Optional<Prediction> predicted(Build build) {
        try {
            return Predictions.of(build);
        } catch (RuntimeException e) {
            LOG.error("what the mismatches do was not worked out", e);
            return Optional.empty();
        }
    }

    private List<Seat> seats(CarState car, Optional<Revision> revision, List<Gap> mismatches) {
        Map<Place, Gap> gaps = mismatches.stream().collect(Collectors.toMap(Gap::place, gap -> gap));
        Map<Place, EffectGroup> groups =
                car.lines().stream().collect(Collectors.toMap(BuildLine::place, BuildLine::group));
        Set<Place> places = new TreeSet<>(groups.keySet());
        places.addAll(gaps.keySet());
        Map<Place, Optional<CoverageLine>> covered = new HashMap<>();
        places.forEach(place -> covered.put(place, revision.flatMap(known -> known.coverageAt(place))));
        Map<UUID, Map<String, Object>> attributes = attributes(car, covered, car.knownAt());
        List<Seat> seats = new ArrayList<>();
        for (Place place : places) {
            Gap gap = gaps.get(place);
            EffectGroup group = gap == null ? groups.getOrDefault(place, EffectGroup.NO_EFFECT) : gap.group();
            Side fitted = side(car.fittedAt(place), attributes);
            Side calibratedFor = gap == null
                    ? fitted
                    : calibratedFor(car, revision, covered.getOrDefault(place, Optional.empty()), attributes);
            seats.add(new Seat(place, group, fitted, calibratedFor, gap != null));
        }
        return seats;
    }

    private Map<UUID, Map<String, Object>> attributes(
            CarState car, Map<Place, Optional<CoverageLine>> covered, Instant knownAt) {
        Stream<UUID> fitted = car.lines().stream()
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()));
        Stream<UUID> written = covered.values().stream()
                .flatMap(Optional::stream)
                .flatMap(line -> line.partSpecIds().stream().limit(1));
        return catalog.attributes(Stream.concat(fitted, written).toList(), knownAt);
    }

    /** Where a revision names several parts, the first; a place that it does not name means factory part. */
    private static Side calibratedFor(
            CarState car,
            Optional<Revision> revision,
            Optional<CoverageLine> line,
            Map<UUID, Map<String, Object>> attributes) {
        if (revision.isEmpty() && !(car.inEcu() instanceof InEcu.Factory)) {
            return Side.UNKNOWN;
        }
        Optional<UUID> first =
                line.flatMap(known -> known.partSpecIds().stream().findFirst());
        if (first.isPresent()) {
            return side(Fitted.part(first.get()), attributes);
        }
        return line.map(CoverageLine::factoryAllowed).orElse(true) ? Side.FACTORY : Side.NONE;
    }

    private static Side side(Fitted fitted, Map<UUID, Map<String, Object>> attributes) {
        return switch (fitted.state()) {
            case PART -> Side.part(attributes.getOrDefault(fitted.partSpecId(), Map.of()));
            case FACTORY -> Side.FACTORY;
            case NONE -> Side.NONE;
            case UNKNOWN -> Side.UNKNOWN;
        };
    }
}
