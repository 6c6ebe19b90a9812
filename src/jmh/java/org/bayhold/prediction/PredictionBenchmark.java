package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** One prediction, from the recorded attributes to the sentences. {@code docs/benchmarks.md}. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 10, time = 1)
@Fork(2)
public class PredictionBenchmark {
    /** ONE: an intake. USUAL: an intake and injectors. ALL: everything that has a formula, curves of 30 points among it. */
    @Param({"ONE", "USUAL", "ALL"})
    public String differing = "";

    private Build build = new Build(List.of(), Map.of(), null, null);

    @Setup
    public void car() {
        List<Seat> seats = new ArrayList<>();
        for (Category category : Category.values()) {
            seats.add(matching(category));
        }
        differ(seats, Category.AIR_INTAKE, intake(80), intake(70));
        if (!differing.equals("ONE")) {
            differ(seats, Category.INJECTORS, injectors(850, 1.18), injectors(550, 1.05));
        }
        if (differing.equals("ALL")) {
            differ(seats, Category.AIRFLOW_SENSOR, sensor(1.1), sensor(1));
            differ(seats, Category.FUEL, Map.of("ethanolPercent", 10), Map.of("ethanolPercent", 5));
            differ(seats, Category.FUEL_PRESSURE_REGULATOR, regulator(400), regulator(300));
            differ(seats, Category.PRESSURE_SENSOR, pressure(60), pressure(50));
        }
        Map<String, Object> assumes = Map.of("peakAirflowGPerS", 150, "trimAuthorityPercent", 25);
        build = new Build(seats, assumes, 200.0, 4);
    }

    @Benchmark
    public Optional<Prediction> predict() {
        return Predictions.of(build);
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(PredictionBenchmark.class.getSimpleName())
                        .build())
                .run();
    }

    private static Seat matching(Category category) {
        return new Seat(Place.of(category), category.born(), Side.FACTORY, Side.FACTORY, false);
    }

    private static void differ(
            List<Seat> seats, Category category, Map<String, Object> fitted, Map<String, Object> calibratedFor) {
        EffectGroup group = category.born();
        seats.replaceAll(seat -> seat.place().category() == category
                ? new Seat(seat.place(), group, Side.part(fitted), Side.part(calibratedFor), true)
                : seat);
    }

    private static Map<String, Object> intake(double boreMm) {
        return Map.of(
                "sensorBoreMm",
                boreMm,
                "filterKind",
                "Oiled cotton",
                "sensorPlacement",
                "STRAIGHT",
                "ductShape",
                "BENT");
    }

    private static Map<String, Object> injectors(double flow, double deadTimeMs) {
        return Map.of("flowCcPerMin", flow, "ratedPressureKpa", 300, "deadTimeMs", deadTimeMs);
    }

    private static Map<String, Object> regulator(double kpa) {
        return Map.of("basePressureKpa", kpa, "reference", "MANIFOLD");
    }

    private static Map<String, Object> pressure(double kpaPerVolt) {
        return Map.of("kpaAtZeroVolts", 10, "kpaPerVolt", kpaPerVolt);
    }

    private static Map<String, Object> sensor(double scale) {
        List<List<Double>> curve = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            double volts = 0.8 + i * 0.14;
            curve.add(List.of(volts, scale * (volts * volts * volts * 2 + volts)));
        }
        return new HashMap<>(Map.of("transfer", curve));
    }
}
