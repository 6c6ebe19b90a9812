package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.ETHANOL_PERCENT;
import static org.bayhold.catalog.PartAttributes.FLOW_CC_PER_MIN;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.NumberAttribute;
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

    /** What would have to be recorded for a duty; empty where all of it is. */
    static List<Sentence> needs(Workings workings) {
        Build build = workings.build;
        List<Sentence> needs = new ArrayList<>();
        List<Seat> rails = build.of(Category.INJECTORS);
        if (workings.assumes.peakAirflow().isEmpty()) {
            needs.add(Sentence.of("prediction.need.assumed", Assumptions.PEAK_AIRFLOW_G_PER_S.name()));
        }
        if (workings.assumes.injectorCount().or(() -> cylinders(build)).isEmpty()) {
            needs.add(Sentence.of("prediction.need.count", Assumptions.INJECTOR_COUNT.name()));
        }
        need(ETHANOL_PERCENT, Category.FUEL, build.at(Place.of(Category.FUEL)), needs);
        if (rails.size() > 1) {
            needs.add(new Sentence("prediction.need.one-rail", List.of()));
        } else {
            Optional<Seat> rail = rails.stream().findFirst();
            need(FLOW_CC_PER_MIN, Category.INJECTORS, rail, needs);
            need(RATED_PRESSURE_KPA, Category.INJECTORS, rail, needs);
            if (rail.filter(known -> new FuelPressure(workings).onTheCar(known).isEmpty())
                    .isPresent()) {
                needs.add(new Sentence("prediction.need.pressure", List.of()));
            }
        }
        return needs;
    }

    private static void need(NumberAttribute figure, Category category, Optional<Seat> seat, List<Sentence> needs) {
        if (seat.filter(known -> figure.in(known.fitted().attributes()).isPresent())
                .isEmpty()) {
            needs.add(Sentence.of("prediction.need.part", figure.name(), category));
        }
    }

    /** Absent where a figure is not recorded, and where injectors sit at several places. */
    static @Nullable Double of(Workings workings) {
        List<Seat> rails = workings.build.of(Category.INJECTORS);
        Optional<Input> airflow = workings.assumes.peakAirflow();
        Optional<Input> count = workings.assumes.injectorCount().or(() -> cylinders(workings.build));
        Optional<Seat> fuel = workings.build.at(Place.of(Category.FUEL));
        OptionalDouble ethanol = fuel.map(
                        known -> ETHANOL_PERCENT.in(known.fitted().attributes()))
                .orElse(OptionalDouble.empty());
        if (rails.size() != 1 || airflow.isEmpty() || count.isEmpty() || fuel.isEmpty() || ethanol.isEmpty()) {
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
        Blend blend = new Blend(ethanol.getAsDouble());
        Input percent = Input.fitted(ETHANOL_PERCENT.name(), blend.ethanolPercent());
        return workings.step(
                Formula.INJECTOR_DUTY,
                rail.place(),
                percent(
                        airflow.get().value(),
                        lambda.value(),
                        blend,
                        count.get().value(),
                        Injectors.flowAt(
                                flow.getAsDouble(),
                                rated.getAsDouble(),
                                pressure.get().value())),
                airflow.get(),
                lambda,
                count.get(),
                Input.computed("stoich_inst", FuelDelivery.stoichiometry(workings, fuel.get(), blend, percent)),
                Input.computed("densityKgPerLitre_inst", FuelDelivery.density(workings, fuel.get(), blend, percent)),
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
