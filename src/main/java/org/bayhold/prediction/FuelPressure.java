package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.BASE_PRESSURE_KPA;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;
import static org.bayhold.catalog.PartAttributes.REFERENCE;
import static org.bayhold.prediction.Input.Origin.ASSUMED;
import static org.bayhold.prediction.Input.Origin.COMPUTED;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartAttributes.Reference;
import org.bayhold.catalog.Place;

/** The pressure across an injector. {@code docs/prediction.md, P11}. */
final class FuelPressure {
    private final Workings workings;

    FuelPressure(Workings workings) {
        this.workings = workings;
    }

    /** What a regulator that differs does to the flow; empty where it cannot be said, which is then on record. */
    Optional<Factor> of(Seat regulator) {
        if (isRecorded(regulator.fitted()) && isOfOneSetting(regulator)) {
            return Optional.of(ofOneSetting(regulator));
        }
        Optional<Input> inst = recorded(regulator, regulator.fitted(), Input.Origin.FITTED);
        Optional<Input> cal = recorded(regulator, regulator.reference(), Input.Origin.CALIBRATED_FOR)
                .or(() -> isRecorded(regulator.reference()) ? Optional.empty() : workings.assumes.fuelPressure());
        if (inst.isEmpty() && !isRecorded(regulator.fitted())) {
            workings.notRecordedOnTheCar(regulator, missing(regulator.fitted()));
        }
        if (cal.isEmpty() && !isRecorded(regulator.reference())) {
            workings.notRecordedByTheCalibration(regulator, missing(regulator.reference()));
        }
        if (inst.isEmpty() || cal.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Factor.everywhere(workings.step(
                Formula.FUEL_PRESSURE,
                regulator.place(),
                ratio(inst.get().value(), cal.get().value()),
                inst.get(),
                cal.get())));
    }

    /** Whatever the manifold does, it does to both. */
    private Factor ofOneSetting(Seat regulator) {
        double base = BASE_PRESSURE_KPA.in(regulator.fitted().attributes()).orElseThrow();
        return Factor.everywhere(workings.step(
                Formula.FUEL_PRESSURE,
                regulator.place(),
                ratio(base, base),
                Input.fitted(BASE_PRESSURE_KPA.name(), base),
                Input.calibrated(BASE_PRESSURE_KPA.name(), base)));
    }

    static double ratio(double instKpa, double calKpa) {
        return Math.sqrt(instKpa / calKpa);
    }

    /**
     * The pressure across the injectors on the car, for the duty. A regulator that says nothing of itself holds what the
     * revision assumes as long as it is the one for which that was written; empty where nothing can be said.
     */
    Optional<Input> onTheCar(Seat injectors) {
        Optional<Seat> regulator = workings.build.at(Place.of(Category.FUEL_PRESSURE_REGULATOR));
        if (regulator.isPresent()
                && (regulator.get().differs() || isRecorded(regulator.get().fitted()))) {
            return recorded(regulator.get(), regulator.get().fitted(), Input.Origin.FITTED);
        }
        return workings.assumes
                .fuelPressure()
                .or(() -> RATED_PRESSURE_KPA.in(injectors.reference().attributes()).stream()
                        .mapToObj(rated -> Input.calibrated(RATED_PRESSURE_KPA.name(), rated))
                        .findFirst());
    }

    /** Empty where base pressure or reference is not recorded, or where no pressure is left, which is then on record. */
    private Optional<Input> recorded(Seat regulator, Side side, Input.Origin origin) {
        OptionalDouble base = BASE_PRESSURE_KPA.in(side.attributes());
        Optional<String> reference = REFERENCE.in(side.attributes());
        if (base.isEmpty() || reference.isEmpty()) {
            return Optional.empty();
        }
        Input held = new Input(BASE_PRESSURE_KPA.name(), base.getAsDouble(), origin);
        return reference.get().equals(Reference.MANIFOLD) ? Optional.of(held) : overAtmosphere(regulator, held);
    }

    private Optional<Input> overAtmosphere(Seat regulator, Input held) {
        Optional<Input> manifold = workings.assumes.manifoldGauge().or(this::atTheBoostTarget);
        if (manifold.isEmpty()) {
            return without(regulator, new Sentence("prediction.why.no-manifold-pressure", List.of()));
        }
        double across = held.value() - manifold.get().value();
        if (across < 1) {
            return without(regulator, new Sentence("prediction.why.no-fuel-pressure", List.of()));
        }
        workings.step(Formula.PRESSURE_OVER_ATMOSPHERE, regulator.place(), across, held, manifold.get());
        return Optional.of(new Input("pressureKpa", across, held.origin()));
    }

    /** A regulator that matches is only asked for the duty, which may be absent; it is no mismatch. */
    private Optional<Input> without(Seat regulator, Sentence why) {
        if (regulator.differs()) {
            workings.cannot(regulator.place(), why);
        }
        return Optional.empty();
    }

    private Optional<Input> atTheBoostTarget() {
        Double target = workings.build.boostTargetKpa();
        if (target == null) {
            return Optional.empty();
        }
        Input barometric = workings.assumes.barometric();
        double gauge = target - barometric.value();
        workings.step(Formula.MANIFOLD_GAUGE, null, gauge, new Input("boostTargetKpa", target, ASSUMED), barometric);
        return Optional.of(new Input("manifoldGaugeKpa", gauge, COMPUTED));
    }

    private static boolean isOfOneSetting(Seat regulator) {
        Map<String, Object> one = regulator.fitted().attributes();
        Map<String, Object> other = regulator.reference().attributes();
        return BASE_PRESSURE_KPA.in(one).equals(BASE_PRESSURE_KPA.in(other))
                && REFERENCE.in(one).equals(REFERENCE.in(other));
    }

    private static boolean isRecorded(Side side) {
        Map<String, Object> attributes = side.attributes();
        return BASE_PRESSURE_KPA.in(attributes).isPresent()
                && REFERENCE.in(attributes).isPresent();
    }

    private static String missing(Side side) {
        return BASE_PRESSURE_KPA.in(side.attributes()).isEmpty() ? BASE_PRESSURE_KPA.name() : REFERENCE.name();
    }
}
