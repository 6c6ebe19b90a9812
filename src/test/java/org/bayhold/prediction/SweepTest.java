package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.bayhold.prediction.ACar.calibratedCar;
import static org.bayhold.prediction.ACar.fuel;
import static org.bayhold.prediction.ACar.injectors;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Sweep.DutyLine;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.bayhold.prediction.Sweep.Named;
import org.bayhold.prediction.Sweep.Point;
import org.bayhold.prediction.Sweep.Spot;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** The pictures of a prediction say what the prediction says. docs/prediction.md, P18. */
class SweepTest {
    /** By flow in g/s: a sensor that reads half of what the other does at the bottom, and as much at the top. */
    private static final List<List<Double>> CALIBRATED =
            List.of(List.of(0.5, 1.0), List.of(1.0, 8.0), List.of(2.0, 40.0), List.of(3.0, 100.0), List.of(4.0, 200.0));

    private static final List<List<Double>> FITTED = List.of(
            List.of(0.5, 2.0), List.of(1.0, 14.0), List.of(2.0, 55.0), List.of(3.0, 115.0), List.of(4.0, 200.0));

    private static ACar withAnotherSensor() {
        return calibratedCar()
                .with(Category.AIRFLOW_SENSOR, Map.of("transfer", FITTED), Map.of("transfer", CALIBRATED));
    }

    @Test
    void withoutATableLambdaIsTheSameEverywhere() {
        MixtureLine line = line(calibratedCar().withIntake(73, 66).assuming("peakAirflowGPerS", 180));
        assertThat(line.fromGPerS()).isEqualTo(4);
        assertThat(line.toGPerS()).isEqualTo(180);
        assertThat(line.points())
                .extracting(point -> point.mixture().lambda())
                .allSatisfy(lambda -> assertThat(lambda).isCloseTo(Math.pow(73.0 / 66, 2), within(1e-12)));
        assertThat(line.points().get(0).flowGPerS()).isEqualTo(4);
        assertThat(line.points()).last().extracting(Point::flowGPerS).isEqualTo(180.0);
        assertThat(line.points())
                .allSatisfy(point -> assertThat(requireNonNull(point.mixture().lambdaHigh()))
                        .isCloseTo(point.mixture().lambda() / 0.9, within(1e-12)));
        assertThat(line.richLimit()).isEqualTo(0.75);
        assertThat(line.leanLimit()).isEqualTo(1.25);
    }

    /** Each flow of the line is what a prediction says whose only airflows are that one. */
    @Test
    void withTablesItGoesByTheAirflow() {
        MixtureLine line = line(withAnotherSensor().assuming("peakAirflowGPerS", 190));
        for (Point point : line.points()) {
            if (point.flowGPerS() <= 100) {
                double flow = Math.max(0.5, point.flowGPerS());
                assertThat(point.mixture().lambda())
                        .isEqualTo(withAnotherSensor()
                                .assuming("idleAirflowGPerS", flow)
                                .assuming("cruiseAirflowGPerS", flow)
                                .lambda());
            }
        }
        assertThat(lambdaAt(line, Named.IDLE)).isGreaterThan(lambdaAt(line, Named.CRUISE));
        assertThat(lambdaAt(line, Named.CRUISE)).isGreaterThan(lambdaAt(line, Named.PEAK));
    }

    @Test
    void theWorstOfTheNamedAirflowsIsTheLambdaOfThePrediction() {
        ACar car = withAnotherSensor().assuming("peakAirflowGPerS", 190).withInjectors(500, 440);
        MixtureLine line = line(car.withIntake(70, 66));
        // the injectors' dead times are not recorded, so that the idle is left to the cruise and the peak
        assertThat(line.pulsesMatterAtIdle()).isTrue();
        assertThat(line.points().get(0).flowGPerS()).isEqualTo(15);
        Prediction prediction = car.predicted();
        double rest = requireNonNull(prediction.mixture()).lambda()
                * requireNonNull(prediction.ratios().airMeter());
        TransferCurves curves = TransferCurves.of(car.build().seats().get(0)).orElseThrow();
        double housing = Math.pow(66.0 / 70, 2);
        for (Spot spot : line.spots()) {
            if (spot.named() != Named.IDLE) {
                assertThat(requireNonNull(spot.mixture()).lambda())
                        .isCloseTo(
                                rest
                                        / housing
                                        / requireNonNull(
                                                curves.at(spot.flowGPerS()).ratio()),
                                withinPercentage(1e-9));
            }
        }
        assertThat(prediction.mixtureAtIdle()).isNull();
        assertThat(line.spots().get(0).mixture()).isNull();
    }

    @Test
    void theIdleWithItsDeadTimesIsAPointByItself() {
        ACar car = calibratedCar()
                .with(
                        Category.INJECTORS,
                        ACar.and(injectors(440), "deadTimeMs", 1.2),
                        ACar.and(injectors(440), "deadTimeMs", 1.0))
                .assuming("peakAirflowGPerS", 150);
        MixtureLine line = line(car);
        assertThat(line.points()).allMatch(point -> point.mixture().lambda() == 1);
        assertThat(line.points().get(0).flowGPerS()).isEqualTo(15);
        Mixture idle = requireNonNull(line.spots().get(0).mixture());
        assertThat(idle).isEqualTo(car.predicted().mixtureAtIdle());
        assertThat(idle.lambda()).isCloseTo(1.5 / 1.3, within(1e-12));
    }

    /** Both begin at 0.5 V; that of the calibration reads no more than 4 V, which the other gives at 200 g/s. */
    @Test
    void theLineEndsWithTheTable() {
        MixtureLine beyond =
                line(withAnotherSensor().assuming("idleAirflowGPerS", 1.5).assuming("peakAirflowGPerS", 300));
        assertThat(beyond.tableBeginsGPerS()).isEqualTo(2.0);
        assertThat(beyond.tableEndsGPerS()).isEqualTo(200.0);
        assertThat(beyond.points().get(0).flowGPerS()).isCloseTo(2, within(1e-6));
        assertThat(beyond.points())
                .last()
                .satisfies(last -> assertThat(last.flowGPerS()).isCloseTo(200, within(1e-6)));
        assertThat(beyond.spots()).extracting(Spot::mixture).element(2).isNull();
        assertThat(beyond.toGPerS()).isEqualTo(300);

        MixtureLine within = line(withAnotherSensor().assuming("peakAirflowGPerS", 190));
        assertThat(within.tableBeginsGPerS()).isNull();
        assertThat(within.tableEndsGPerS()).isNull();
    }

    @Test
    void withoutAPeakItGoesToTheEndOfTheTableOrToCruise() {
        assertThat(line(withAnotherSensor()).toGPerS()).isEqualTo(200);
        assertThat(line(calibratedCar().withIntake(73, 66)).toGPerS()).isEqualTo(15);
        assertThat(line(withAnotherSensor()).spots()).extracting(Spot::named).containsExactly(Named.IDLE, Named.CRUISE);
    }

    @Test
    void whereNothingIsKnownThereIsNoLine() {
        ACar car = calibratedCar().with(Category.CAMSHAFT, Map.of(), Map.of());
        assertThat(sweep(car).mixture()).isNull();
        assertThat(Sweep.of(calibratedCar()
                        .withMatching(Category.INJECTORS, injectors(440))
                        .build()))
                .isEmpty();
    }

    @Test
    void theDutyIsThatOfAPredictionAtTheSamePeak() {
        double[] peaks = {40, 110, 180};
        DutyLine line = requireNonNull(sweep(withDuty(180)).duty());
        for (double peak : peaks) {
            assertThat(line.percentAt(peak))
                    .isCloseTo(
                            requireNonNull(withDuty(peak).predicted().injectorDutyPercent()), withinPercentage(1e-9));
        }
        assertThat(line.percentAt(line.flowAt(85))).isCloseTo(85, within(1e-9));
        assertThat(line.lambda()).isEqualTo(0.8);
        assertThat(sweep(withDuty(180)).dutyNeeds()).isEmpty();
    }

    @Test
    void withoutADutyItSaysWhatWouldHaveToBeRecorded() {
        Sweep sweep = sweep(calibratedCar().withIntake(73, 66));
        assertThat(sweep.duty()).isNull();
        assertThat(sweep.dutyNeeds())
                .containsExactly(
                        Sentence.of("prediction.need.assumed", "peakAirflowGPerS"),
                        Sentence.of("prediction.need.count", "injectorCount"),
                        Sentence.of("prediction.need.part", "ethanolPercent", Category.FUEL),
                        Sentence.of("prediction.need.part", "flowCcPerMin", Category.INJECTORS),
                        Sentence.of("prediction.need.part", "ratedPressureKpa", Category.INJECTORS));
        ACar diesel = withDuty(180).assuming("ignition", "COMPRESSION");
        assertThat(sweep(diesel).dutyNeeds())
                .extracting(Sentence::key)
                .containsExactly("prediction.why.compression-ignition");
        assertThat(sweep(diesel).mixture()).isNull();
    }

    /** What is fitted and what was calibrated for, the other way round: one over the other, at every airflow. */
    @Test
    void swappingTheSidesInvertsTheLine() {
        Random random = new Random(Seed.OF_THIS_RUN);
        for (int n = 0; n < 100; n++) {
            double one = 40 + 60 * random.nextDouble();
            double other = 40 + 60 * random.nextDouble();
            double large = 300 + 500 * random.nextDouble();
            List<Point> there = line(calibratedCar().withIntake(one, other).withInjectors(large, 440))
                    .points();
            List<Point> back = line(calibratedCar().withIntake(other, one).withInjectors(440, large))
                    .points();
            assertThat(there).hasSameSizeAs(back);
            for (int i = 0; i < there.size(); i++) {
                assertThat(there.get(i).mixture().lambda()
                                * back.get(i).mixture().lambda())
                        .isCloseTo(1, within(1e-9));
            }
        }
    }

    @Test
    void theFlowsRise() {
        List<Double> flows = new ArrayList<>();
        line(withAnotherSensor().assuming("peakAirflowGPerS", 190))
                .points()
                .forEach(point -> flows.add(point.flowGPerS()));
        assertThat(flows).isSortedAccordingTo(Comparator.naturalOrder()).doesNotHaveDuplicates();
        assertThat(flows).contains(4.0, 15.0, 190.0);
    }

    private static ACar withDuty(double peak) {
        return calibratedCar()
                .withInjectors(650, 440)
                .withMatching(Category.FUEL, fuel(10))
                .withCylinders(4)
                .assuming("peakAirflowGPerS", peak);
    }

    private static double lambdaAt(MixtureLine line, Named named) {
        return line.spots().stream()
                .filter(spot -> spot.named() == named)
                .map(spot -> requireNonNull(spot.mixture()).lambda())
                .findFirst()
                .orElseThrow();
    }

    private static Sweep sweep(ACar car) {
        return Sweep.of(car.build()).orElseThrow();
    }

    private static MixtureLine line(ACar car) {
        return requireNonNull(sweep(car).mixture());
    }
}
