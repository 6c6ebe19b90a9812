package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.prediction.ACar.calibratedCar;
import static org.bayhold.prediction.ACar.fuel;
import static org.bayhold.prediction.ACar.injectors;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Input.Origin;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Boost;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Prediction.Ratios;
import org.junit.jupiter.api.Test;

/** Every number of a prediction can be followed back to what is recorded. docs/prediction.md, P1. */
class TraceTest {
    private static final List<List<Double>> TABLE =
            List.of(List.of(0.5, 1.0), List.of(1.0, 8.0), List.of(2.0, 40.0), List.of(4.0, 200.0));
    private static final List<List<Double>> OTHER =
            List.of(List.of(0.5, 1.1), List.of(1.0, 9.0), List.of(2.0, 60.0), List.of(4.0, 300.0));

    /** A car on which every formula has work. */
    private static Prediction everything() {
        return calibratedCar()
                .withIntake(73, 66)
                .with(Category.AIRFLOW_SENSOR, Map.of("transfer", TABLE), Map.of("transfer", OTHER))
                .with(
                        Category.INJECTORS,
                        ACar.and(injectors(650), "deadTimeMs", 1.2),
                        ACar.and(injectors(440), "deadTimeMs", 1.0))
                .with(
                        Category.FUEL_PRESSURE_REGULATOR,
                        Map.of("basePressureKpa", 400, "reference", "ATMOSPHERE"),
                        Map.of("basePressureKpa", 300, "reference", "MANIFOLD"))
                .with(Category.FUEL, fuel(30), fuel(5))
                .with(
                        Category.PRESSURE_SENSOR,
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 60),
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 50))
                .withBoostTarget(180)
                .withCylinders(4)
                .assuming("peakAirflowGPerS", 150)
                .predicted();
    }

    @Test
    void everyNumberOfThePredictionIsTheValueOfAStep() {
        Prediction prediction = everything();
        Mixture mixture = requireNonNull(prediction.mixture());
        Ratios ratios = prediction.ratios();
        Boost boost = requireNonNull(prediction.boost());
        assertThat(values(prediction))
                .contains(
                        requireNonNull(ratios.airMeter()),
                        requireNonNull(ratios.airMeterBandPercent()),
                        requireNonNull(ratios.fuelDelivery()),
                        requireNonNull(ratios.fuelDeliveryAtIdle()),
                        requireNonNull(ratios.stoichiometric()),
                        mixture.lambda(),
                        requireNonNull(mixture.lambdaLow()),
                        requireNonNull(mixture.lambdaHigh()),
                        mixture.trimDemandPercent(),
                        mixture.authorityUsedPercent(),
                        mixture.lambdaLeft(),
                        requireNonNull(prediction.mixtureAtIdle()).lambda(),
                        requireNonNull(prediction.injectorDutyPercent()),
                        requireNonNull(boost.readingRatio()),
                        requireNonNull(boost.reachedKpa()),
                        requireNonNull(boost.excessPercent()));
        for (Alone alone : prediction.alone()) {
            assertThat(prediction.trace())
                    .filteredOn(step -> alone.place().equals(step.place()))
                    .extracting(Step::value)
                    .contains(
                            alone.mixture().lambda(),
                            alone.mixture().trimDemandPercent(),
                            requireNonNull(alone.mixtureAtIdle()).lambda());
        }
    }

    /** What went into a step as an earlier one is there, before it. */
    @Test
    void everyEarlierStepIsThere() {
        Set<Double> known = new HashSet<>();
        // what a table reads is not a step by itself
        Set<String> ofTables = Set.of("signal", "believedGPerS");
        for (Step step : everything().trace()) {
            for (Input input : step.inputs()) {
                if (input.origin() == Origin.COMPUTED && !ofTables.contains(input.name())) {
                    assertThat(known).as("%s of %s", input, step.formula()).contains(input.value());
                }
            }
            known.add(step.value());
        }
    }

    @Test
    void everyFormulaHasWork() {
        Set<Formula> used = new HashSet<>();
        everything().trace().forEach(step -> used.add(step.formula()));
        assertThat(used).contains(Formula.values());
    }

    @Test
    void everyOriginIsSaid() {
        assertThat(everything().trace().stream().flatMap(step -> step.inputs().stream()))
                .extracting(Input::origin)
                .contains(Origin.values());
    }

    private static Stream<Double> values(Prediction prediction) {
        return prediction.trace().stream().map(Step::value);
    }
}
