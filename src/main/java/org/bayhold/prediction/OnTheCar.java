package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.ETHANOL_PERCENT;
import static org.bayhold.catalog.PartAttributes.FLOW_CC_PER_MIN;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;
import static org.bayhold.catalog.PartAttributes.TRANSFER;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;

/** What is on record of the car itself, for whoever holds a measurement against it. */
public final class OnTheCar {
    private OnTheCar() {}

    /**
     * The injectors and the fuel. {@code docs/prediction.md, P10, P13 and P14}.
     *
     * @param flowCcPerMin of one, fully open, at the pressure that the car has
     */
    public record Injection(int count, double flowCcPerMin, double densityKgPerLitre, double stoichiometricRatio) {}

    /** What the duty of injectors is worked out of. */
    record Injecting(
            Seat rail, Seat fuel, Input count, double flowCcPerMin, double ratedKpa, Input pressureKpa, Blend blend) {
        double flowAtPressure() {
            return Injectors.flowAt(flowCcPerMin, ratedKpa, pressureKpa.value());
        }
    }

    /** Absent where a figure is not recorded, and where injectors sit at several places. */
    public static Optional<Injection> injection(Build build) {
        return injecting(new Workings(build))
                .map(known -> new Injection(
                        (int) Math.round(known.count().value()),
                        known.flowAtPressure(),
                        known.blend().densityKgPerLitre(),
                        known.blend().stoichiometry()));
    }

    static Optional<Injecting> injecting(Workings workings) {
        List<Seat> rails = workings.build.of(Category.INJECTORS);
        Optional<Input> count = workings.assumes.injectorCount().or(() -> cylinders(workings.build));
        Optional<Seat> fuel = workings.build.at(Place.of(Category.FUEL));
        OptionalDouble ethanol = fuel.map(
                        known -> ETHANOL_PERCENT.in(known.fitted().attributes()))
                .orElse(OptionalDouble.empty());
        if (rails.size() != 1 || count.isEmpty() || fuel.isEmpty() || ethanol.isEmpty()) {
            return Optional.empty();
        }
        Seat rail = rails.get(0);
        OptionalDouble flow = FLOW_CC_PER_MIN.in(rail.fitted().attributes());
        OptionalDouble rated = RATED_PRESSURE_KPA.in(rail.fitted().attributes());
        if (flow.isEmpty() || rated.isEmpty()) {
            return Optional.empty();
        }
        return new FuelPressure(workings)
                .onTheCar(rail)
                .map(pressure -> new Injecting(
                        rail,
                        fuel.get(),
                        count.get(),
                        flow.getAsDouble(),
                        rated.getAsDouble(),
                        pressure,
                        new Blend(ethanol.getAsDouble())));
    }

    /** One injector for each cylinder, where the revision does not say how many. */
    static Optional<Input> cylinders(Build build) {
        Integer cylinders = build.cylinders();
        return cylinders == null || cylinders < 1
                ? Optional.empty()
                : Optional.of(new Input("cylinders", cylinders, Input.Origin.CAR));
    }

    /** The largest flow of the airflow sensor's curve, in g/s: what is beyond, it cannot tell. Empty where none is recorded. */
    public static OptionalDouble airflowCeilingGPerS(Build build) {
        return build.at(Place.of(Category.AIRFLOW_SENSOR)).stream()
                .flatMap(sensor -> TRANSFER.in(sensor.fitted().attributes()).stream())
                .mapToDouble(curve -> curve.flowGPerS(curve.points() - 1))
                .findFirst();
    }

    /** By how much the ECU may correct. {@code docs/prediction.md, P15}. */
    public static double trimAuthorityPercent(Build build) {
        return new Assumptions(build.assumes()).trimAuthority().value();
    }
}
