package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Share.Link;
import org.jspecify.annotations.Nullable;

/** The sheet on which one prediction is worked out: the car, the steps so far, and what could not be computed. */
final class Workings {
    final Build build;
    final Assumptions assumes;
    private final List<Input> flows;
    private final List<Step> steps = new ArrayList<>();
    private final List<Share> shares = new ArrayList<>();
    private final List<NotComputable> notComputable = new ArrayList<>();

    Workings(Build build) {
        this(build, flows(new Assumptions(build.assumes())));
    }

    /** @param flows at which what goes by the airflow is worked out, the idle first */
    private Workings(Build build, List<Input> flows) {
        this.build = build;
        this.assumes = new Assumptions(build.assumes());
        this.flows = flows;
    }

    /** The same car, of which only one airflow is asked. */
    static Workings at(Build build, double flowGPerS) {
        return new Workings(build, List.of(Input.computed("airflowGPerS", flowGPerS)));
    }

    private static List<Input> flows(Assumptions assumes) {
        List<Input> flows = new ArrayList<>(List.of(assumes.idleAirflow(), assumes.cruiseAirflow()));
        assumes.peakAirflow().ifPresent(flows::add);
        return flows;
    }

    /** The airflows at which a sensor is read. {@code docs/prediction.md, P6}. */
    List<Input> flows() {
        return flows;
    }

    List<Step> steps() {
        return steps;
    }

    List<Share> shares() {
        return shares;
    }

    List<NotComputable> notComputable() {
        return notComputable;
    }

    /** Writes a step down, once however often it is asked for, and gives its value back. */
    double step(Formula formula, @Nullable Place place, double value, Input... inputs) {
        Step step = new Step(formula, place, List.of(inputs), value);
        if (!steps.contains(step)) {
            steps.add(step);
        }
        return value;
    }

    void cannot(Place place, Sentence why) {
        NotComputable entry = new NotComputable(place, why);
        if (!notComputable.contains(entry)) {
            notComputable.add(entry);
        }
    }

    void share(Seat seat, Link link, Factor factor) {
        shares.add(new Share(seat.place(), link, factor));
    }

    /** Nothing can be computed of a place that nobody knows, or where one side has no part; says so. */
    boolean isBlank(Seat seat) {
        boolean unknown = seat.fitted().isUnknown() || seat.calibratedFor().isUnknown();
        if (unknown) {
            cannot(
                    seat.place(),
                    new Sentence(
                            seat.fitted().isUnknown() ? "prediction.why.unknown" : "prediction.why.calibration-unknown",
                            List.of()));
        } else if (seat.fitted().isEmpty() || seat.calibratedFor().isEmpty()) {
            cannot(seat.place(), new Sentence("prediction.why.empty", List.of()));
        }
        return unknown || seat.fitted().isEmpty() || seat.calibratedFor().isEmpty();
    }

    /** A figure of the part on the car; says so where it is not recorded. */
    OptionalDouble fitted(Seat seat, NumberAttribute attribute) {
        OptionalDouble value = attribute.in(seat.fitted().attributes());
        if (value.isEmpty()) {
            notRecordedOnTheCar(seat, attribute.name());
        }
        return value;
    }

    /** The same figure of the part for which the calibration was written. */
    OptionalDouble calibrated(Seat seat, NumberAttribute attribute) {
        OptionalDouble value = attribute.in(seat.reference().attributes());
        if (value.isEmpty()) {
            notRecordedByTheCalibration(seat, attribute.name());
        }
        return value;
    }

    void notRecordedOnTheCar(Seat seat, String attribute) {
        cannot(seat.place(), Sentence.of("prediction.why.not-recorded-on-the-car", attribute));
    }

    void notRecordedByTheCalibration(Seat seat, String attribute) {
        cannot(seat.place(), Sentence.of("prediction.why.not-recorded-by-the-calibration", attribute));
    }

    /**
     * The one factor of a category, {@code docs/prediction.md, P3}: where it has several places, each of them has to
     * change alike, or no one number says what happens.
     */
    Optional<Factor> factorOf(Category category, Link link) {
        List<Share> own = shares.stream()
                .filter(share -> share.place().category() == category && share.link() == link)
                .toList();
        if (own.isEmpty()) {
            return Optional.empty();
        }
        Factor factor = own.get(0).factor();
        boolean alike = own.size() == build.of(category).size()
                && own.stream().allMatch(share -> share.factor().isFactor(factor));
        if (!alike) {
            own.forEach(share -> cannot(share.place(), Sentence.of("prediction.why.places-differ", category)));
        }
        return alike ? Optional.of(factor) : Optional.empty();
    }
}
