package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** A car for the prediction: what its calibration was written for, and what sits on it. */
final class ACar {
    /** An intake of which the surroundings of the sensor are known. */
    static final Map<String, Object> SURROUNDINGS =
            Map.of("filterKind", "PAPER", "sensorPlacement", "STRAIGHT", "ductShape", "STRAIGHT");

    private final List<Seat> seats = new ArrayList<>();
    private final Map<String, Object> assumes = new HashMap<>();
    private @Nullable Double boostTargetKpa;
    private @Nullable Integer cylinders;

    static ACar calibratedCar() {
        return new ACar();
    }

    ACar assuming(String name, Object value) {
        assumes.put(name, value);
        return this;
    }

    ACar withBoostTarget(double kpa) {
        boostTargetKpa = kpa;
        return this;
    }

    ACar withCylinders(int count) {
        cylinders = count;
        return this;
    }

    /** A part of these attributes where the calibration was written for one of those. */
    ACar with(Category category, Map<String, Object> fitted, Map<String, Object> calibratedFor) {
        return with(category, Side.part(fitted), Side.part(calibratedFor));
    }

    ACar with(Category category, Side fitted, Side calibratedFor) {
        return with(new Seat(Place.of(category), category.born(), fitted, calibratedFor, true));
    }

    ACar withMatching(Category category, Map<String, Object> attributes) {
        Side part = Side.part(attributes);
        return with(new Seat(Place.of(category), category.born(), part, part, false));
    }

    ACar with(Seat seat) {
        seats.add(seat);
        return this;
    }

    /** A differing intake of equal surroundings. */
    ACar withIntake(double instMm, double calMm) {
        return with(Category.AIR_INTAKE, intake(instMm), intake(calMm));
    }

    ACar withInjectors(double instCc, double calCc) {
        return with(Category.INJECTORS, injectors(instCc), injectors(calCc));
    }

    static Map<String, Object> intake(double boreMm) {
        return and(SURROUNDINGS, "sensorBoreMm", boreMm);
    }

    static Map<String, Object> injectors(double ccPerMin) {
        return Map.of("flowCcPerMin", ccPerMin, "ratedPressureKpa", 300);
    }

    static Map<String, Object> fuel(double ethanolPercent) {
        return Map.of("ethanolPercent", ethanolPercent);
    }

    static Map<String, Object> and(Map<String, Object> attributes, String name, Object value) {
        Map<String, Object> more = new HashMap<>(attributes);
        more.put(name, value);
        return more;
    }

    Build build() {
        return new Build(seats, assumes, boostTargetKpa, cylinders);
    }

    Prediction predicted() {
        return Predictions.of(build()).orElseThrow();
    }

    double lambda() {
        return requireNonNull(predicted().mixture()).lambda();
    }
}
