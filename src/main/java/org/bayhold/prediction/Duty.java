package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.ETHANOL_PERCENT;
import static org.bayhold.catalog.PartAttributes.FLOW_CC_PER_MIN;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        if (workings.assumes.injectorCount().or(() -> OnTheCar.cylinders(build)).isEmpty()) {
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
        Optional<Input> airflow = workings.assumes.peakAirflow();
        Optional<OnTheCar.Injecting> injecting = airflow.isEmpty() ? Optional.empty() : OnTheCar.injecting(workings);
        if (injecting.isEmpty() || airflow.isEmpty()) {
            return null;
        }
        OnTheCar.Injecting known = injecting.get();
        Input lambda = workings.assumes.peakLambda();
        Blend blend = known.blend();
        Seat fuel = known.fuel();
        Input percent = Input.fitted(ETHANOL_PERCENT.name(), blend.ethanolPercent());
        return workings.step(
                Formula.INJECTOR_DUTY,
                known.rail().place(),
                percent(
                        airflow.get().value(),
                        lambda.value(),
                        blend,
                        known.count().value(),
                        known.flowAtPressure()),
                airflow.get(),
                lambda,
                known.count(),
                Input.computed("stoich_inst", FuelDelivery.stoichiometry(workings, fuel, blend, percent)),
                Input.computed("densityKgPerLitre_inst", FuelDelivery.density(workings, fuel, blend, percent)),
                Input.fitted(FLOW_CC_PER_MIN.name(), known.flowCcPerMin()),
                Input.fitted(RATED_PRESSURE_KPA.name(), known.ratedKpa()),
                known.pressureKpa());
    }
}
