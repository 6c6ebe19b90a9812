package org.bayhold.gate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CarWalk;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Draws a car's time: what sat where, which calibration was in the ECU, when the two did not match, when it was handed over. */
@Component
class TimeLines {
    private static final Duration LEAST_BEFORE = Duration.ofMinutes(30);

    private final Replays replays;
    private final Catalog catalog;
    private final MessageSource messages;

    TimeLines(Replays replays, Catalog catalog, MessageSource messages) {
        this.replays = replays;
        this.catalog = catalog;
        this.messages = messages;
    }

    /** The car at one moment, and whether its calibration matched. */
    private record Moment(CarState car, Replay.Match match) {}

    /** The whole time of the car up to what is known at {@code asOf}, with a pointer where that is not now. */
    TimeLine of(CarRecord record, AsOf asOf, boolean knownThen) {
        CarWalk walk = new CarWalk(record, asOf.knownAt());
        TreeSet<Instant> moments = new TreeSet<>(walk.moments());
        moments.add(record.registration().recordedAt());
        moments.removeIf(moment -> moment.isAfter(asOf.knownAt()));
        // the baseline holds from the beginning of time, and is given a little room
        Instant first = moments.isEmpty() ? asOf.knownAt() : moments.first();
        moments.add(first.minus(before(first, asOf.knownAt())));
        Replay replay = replays.replay();
        Map<Instant, Moment> cars = new HashMap<>();
        for (Instant moment : moments) {
            CarState car = walk.to(moment);
            cars.put(moment, new Moment(car, replay.match(record, car)));
        }
        moments.add(asOf.knownAt());
        List<Instant> list = List.copyOf(moments);
        TimeLine.Scale scale = new TimeLine.Scale(moments);
        return new TimeLine(
                lanes(list, cars, scale), marks(walk, scale), scale.ticks(), pointers(asOf, knownThen, scale));
    }

    private static Duration before(Instant first, Instant last) {
        Duration twentieth = Duration.between(first, last).abs().dividedBy(20);
        return twentieth.compareTo(LEAST_BEFORE) > 0 ? twentieth : LEAST_BEFORE;
    }

    private List<TimeLine.Lane> lanes(List<Instant> moments, Map<Instant, Moment> cars, TimeLine.Scale scale) {
        Map<UUID, PartSpec> specs = catalog.specs(cars.values().stream()
                .flatMap(moment -> moment.car().lines().stream())
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()))
                .distinct()
                .toList());
        List<TimeLine.Lane> lanes = new ArrayList<>();
        lanes.add(TimeLine.lane(
                0,
                message("time-line.match"),
                moments,
                scale,
                at -> match(of(cars, at).match())));
        lanes.add(TimeLine.lane(
                1,
                message("time-line.calibration"),
                moments,
                scale,
                at -> calibration(of(cars, at).car())));
        for (Place place : changed(cars)) {
            lanes.add(TimeLine.lane(
                    lanes.size(),
                    label(place),
                    moments,
                    scale,
                    at -> fitted(of(cars, at).car().fittedAt(place), specs)));
        }
        lanes.add(TimeLine.lane(
                lanes.size(),
                message("time-line.where"),
                moments,
                scale,
                at -> where(of(cars, at).car())));
        return lanes;
    }

    private static Moment of(Map<Instant, Moment> cars, Instant at) {
        return java.util.Objects.requireNonNull(cars.get(at));
    }

    /** Places at which not the same sat all the time. */
    private static Set<Place> changed(Map<Instant, Moment> cars) {
        Map<Place, Set<Fitted>> found = new HashMap<>();
        TreeSet<Place> places = new TreeSet<>();
        cars.values().forEach(moment -> moment.car().lines().forEach(line -> places.add(line.place())));
        places.forEach(place -> cars.values()
                .forEach(moment -> found.computeIfAbsent(place, key -> new HashSet<>())
                        .add(moment.car().fittedAt(place))));
        places.removeIf(place -> found.getOrDefault(place, Set.of()).size() < 2);
        return places;
    }

    private TimeLine.Value match(Replay.Match match) {
        return match.unmatched()
                ? new TimeLine.Value(message("time-line.unmatched"), TimeLine.Kind.UNMATCHED)
                : new TimeLine.Value(message("time-line.matched"), TimeLine.Kind.MATCHED);
    }

    private TimeLine.Value where(CarState car) {
        return car.stay().inShop()
                ? new TimeLine.Value(message("car.in-shop"), TimeLine.Kind.HERE)
                : new TimeLine.Value(message("car.out"), TimeLine.Kind.AWAY);
    }

    private TimeLine.Value fitted(Fitted fitted, Map<UUID, PartSpec> specs) {
        PartSpec spec = specs.get(fitted.partSpecId());
        String text = spec == null ? message("fitted." + fitted.state().name()) : spec.name();
        return new TimeLine.Value(
                text,
                switch (fitted.state()) {
                    case PART -> TimeLine.Kind.PART;
                    case FACTORY -> TimeLine.Kind.FACTORY;
                    case NONE -> TimeLine.Kind.NOTHING;
                    case UNKNOWN -> TimeLine.Kind.UNKNOWN;
                });
    }

    private TimeLine.Value calibration(CarState car) {
        return car.revision()
                .map(revision ->
                        new TimeLine.Value(revision.name() + ", " + revision.revision(), TimeLine.Kind.CALIBRATION))
                .orElseGet(() -> car.inEcu().match(new Unrevised()));
    }

    /** What is in the ECU where it is no revision of the shop. */
    private final class Unrevised implements InEcu.Cases<TimeLine.Value> {
        @Override
        public TimeLine.Value factory(InEcu.Factory in) {
            return new TimeLine.Value(message("car.in-ecu.FACTORY"), TimeLine.Kind.FACTORY);
        }

        @Override
        public TimeLine.Value unknown(InEcu.Unknown in) {
            return unknown("car.in-ecu.UNKNOWN");
        }

        @Override
        public TimeLine.Value flashed(InEcu.Flashed in) {
            throw new IllegalStateException("a flashed revision is a revision");
        }

        @Override
        public TimeLine.Value found(InEcu.Found in) {
            throw new IllegalStateException("a found revision is a revision");
        }

        @Override
        public TimeLine.Value notOurs(InEcu.NotOurs in) {
            return unknown("car.in-ecu.NOT_OURS");
        }

        @Override
        public TimeLine.Value failed(InEcu.Failed in) {
            return unknown("car.in-ecu.FAILED");
        }

        private TimeLine.Value unknown(String key) {
            return new TimeLine.Value(message(key), TimeLine.Kind.UNKNOWN);
        }
    }

    private List<TimeLine.Mark> marks(CarWalk walk, TimeLine.Scale scale) {
        return walk.live().stream()
                .filter(Fact.HandedOver.class::isInstance)
                .map(Fact.HandedOver.class::cast)
                .map(handoff -> new TimeLine.Mark(
                        handoff.stamp().effectiveAt(),
                        message("certificate.released." + handoff.basis().name()),
                        handoff.basis() == Fact.HandoffBasis.EXCEPTION,
                        scale.x(handoff.stamp().effectiveAt())))
                .toList();
    }

    /** Where the picture ends is what is known; a moment before that is pointed at. */
    private List<TimeLine.Pointer> pointers(AsOf asOf, boolean knownThen, TimeLine.Scale scale) {
        List<TimeLine.Pointer> pointers = new ArrayList<>();
        if (asOf.effectiveAt().isBefore(asOf.knownAt())) {
            pointers.add(new TimeLine.Pointer(message("time-line.as-it-was"), scale.x(asOf.effectiveAt())));
        }
        if (knownThen) {
            pointers.add(new TimeLine.Pointer(message("time-line.as-known"), scale.x(asOf.knownAt())));
        }
        return pointers;
    }

    private String label(Place place) {
        String category = message("category." + place.category().name());
        return place.position() == null ? category : category + ", " + place.position();
    }

    private String message(String key) {
        return java.util.Objects.requireNonNull(messages.getMessage(key, null, key, Locale.ENGLISH));
    }
}
