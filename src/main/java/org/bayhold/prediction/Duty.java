package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.ETHANOL_PERCENT;
import static org.bayhold.catalog.PartAttributes.FLOW_CC_PER_MIN;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** How long the injectors on the car are open at the peak airflow. {@code docs/prediction.md, P14}. */
final class Duty {
    private Duty() {}

    /** In percent; above 100 they cannot deliver it. */
    static double percent(
            double airflowGPerS, double lambda, Blend fuel, double injectorCount, double flowCcPerMinAtPressure) {
        double fuelGPerS = airflowGPerS / (lambda * fuel.stoichiometry());
        double ccPerMinEach = fuelGPerS / injectorCount / fuel.densityKgPerLitre() * 60;
        return ccPerMinEach / flowCcPerMinAtPressure * 100;
    }

    /** Absent where a figure is not recorded, and where injectors sit at several places. */
    static @Nullable Double of(Workings workings) {
        List<Seat> rails = workings.build.of(Category.INJECTORS);
        Optional<Input> airflow = workings.assumes.peakAirflow();
        Optional<Input> count = workings.assumes.injectorCount().or(() -> cylinders(workings.build));
        OptionalDouble ethanol = workings.build
                .at(Place.of(Category.FUEL))
                .map(fuel -> ETHANOL_PERCENT.in(fuel.fitted().attributes()))
                .orElse(OptionalDouble.empty());
        if (rails.size() != 1 || airflow.isEmpty() || count.isEmpty() || ethanol.isEmpty()) {
            return null;
        }
        Seat rail = rails.get(0);
        OptionalDouble flow = FLOW_CC_PER_MIN.in(rail.fitted().attributes());
        OptionalDouble rated = RATED_PRESSURE_KPA.in(rail.fitted().attributes());
        Optional<Input> pressure = new FuelPressure(workings).onTheCar(rail);
        if (flow.isEmpty() || rated.isEmpty() || pressure.isEmpty()) {
            return null;
        }
        Input lambda = workings.assumes.peakLambda();
        return workings.step(
                Formula.INJECTOR_DUTY,
                rail.place(),
                percent(
                        airflow.get().value(),
                        lambda.value(),
                        new Blend(ethanol.getAsDouble()),
                        count.get().value(),
                        Injectors.flowAt(
                                flow.getAsDouble(),
                                rated.getAsDouble(),
                                pressure.get().value())),
                airflow.get(),
                lambda,
                count.get(),
                Input.fitted(ETHANOL_PERCENT.name(), ethanol.getAsDouble()),
                Input.fitted(FLOW_CC_PER_MIN.name(), flow.getAsDouble()),
                Input.fitted(RATED_PRESSURE_KPA.name(), rated.getAsDouble()),
                pressure.get());
    }

    /** One injector for each cylinder, where the revision does not say how many. */
    private static Optional<Input> cylinders(Build build) {
        Integer cylinders = build.cylinders();
        return cylinders == null || cylinders < 1
                ? Optional.empty()
                : Optional.of(new Input("cylinders", cylinders, Input.Origin.CAR));
    }
}
