package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bayhold.prediction.ACar.calibratedCar;
import static org.bayhold.prediction.ACar.fuel;

import java.util.List;
import java.util.Map;
import org.bayhold.catalog.Category;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** {@code docs/prediction.md, P9 and P14 to P17}: duty, boost, and how bad it is. */
class RiskTest {
    /** The thresholds are the shop's own: common practice, no source. Authority 25 % where nothing is assumed. */
    @ParameterizedTest
    @CsvSource({
        "440, 440, MODERATE", // nothing to correct, and still another part
        "500, 440, MODERATE", // -12.0 %: less than half of the authority
        "505, 440, HIGH", // -12.9 %
        "586, 440, HIGH", // -24.9 %
        "587, 440, EXTREME", // -25.04 %
        "400, 440, EXTREME", // lambda 1.100
        "401, 440, MODERATE" // lambda 1.097, +9.7 %
    })
    void injectors(double inst, double cal, Risk risk) {
        assertThat(calibratedCar().withInjectors(inst, cal).predicted().risk()).isEqualTo(risk);
    }

    @Test
    void aSmallAuthorityIsSoonUsedUp() {
        ACar car = calibratedCar().assuming("trimAuthorityPercent", 10).withInjectors(500, 440);
        assertThat(car.predicted().risk()).isEqualTo(Risk.EXTREME);
        assertThat(keys(car)).contains("prediction.beyond-authority", "prediction.do-not-start");
    }

    /** Lambda 1.04 within a band of 10 % may be 1.156. */
    @Test
    void whatMayBeLeanWithinItsBandIsHigh() {
        Prediction wide = calibratedCar().withIntake(70 * Math.sqrt(1.04), 70).predicted();
        assertThat(requireNonNull(wide.mixture()).lambda()).isCloseTo(1.04, within(1e-9));
        assertThat(wide.risk()).isEqualTo(Risk.HIGH);
        Prediction nearly = calibratedCar().withIntake(70 * Math.sqrt(1.03), 70).predicted();
        assertThat(nearly.risk()).isEqualTo(Risk.MODERATE);
    }

    /** 66 to 73 mm and 440 to 538 cc/min: each is 22 % off, and together they are right. */
    @Test
    void twoErrorsThatHideEachOtherAreStillExtreme() {
        ACar hidden = calibratedCar().withIntake(73, 66).withInjectors(440 * 1.22337, 440);
        Prediction both = hidden.predicted();
        assertThat(requireNonNull(both.mixture()).lambda()).isCloseTo(1, within(1e-5));
        assertThat(requireNonNull(both.mixture()).authorityUsedPercent()).isLessThan(1);
        assertThat(both.risk()).isEqualTo(Risk.EXTREME);
        assertThat(keys(hidden)).contains("prediction.hiding", "prediction.do-not-start");
    }

    /** 66 to 73 mm and 440 to 650 cc/min: f = 0.817414 * 1.477273 = 1.207544, by the two rules together. */
    @Test
    void anotherPairIsHalfHidden() {
        ACar car = calibratedCar().withIntake(73, 66).withInjectors(650, 440);
        assertThat(car.lambda()).isCloseTo(0.828127, within(1e-6));
        assertThat(car.predicted().risk()).isEqualTo(Risk.EXTREME);
    }

    @Test
    void boostThatIsReachedByASensorOfAnotherRange() {
        Map<String, Object> wide = Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 60);
        Map<String, Object> narrow = Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 50);
        Prediction over = calibratedCar()
                .withBoostTarget(200)
                .with(Category.PRESSURE_SENSOR, wide, narrow)
                .predicted();
        assertThat(requireNonNull(over.boost()).reachedKpa()).isCloseTo(240, within(1e-9));
        assertThat(over.boost().excessPercent()).isCloseTo(20, within(1e-9));
        assertThat(over.boost().readingRatio()).isCloseTo(0.833333, within(1e-6));
        assertThat(over.mixture()).isNull();
        assertThat(over.risk()).isEqualTo(Risk.EXTREME);
        Prediction under = calibratedCar()
                .withBoostTarget(200)
                .with(Category.PRESSURE_SENSOR, narrow, wide)
                .predicted();
        assertThat(requireNonNull(under.boost()).reachedKpa()).isCloseTo(166.667, within(1e-3));
        assertThat(under.risk()).isEqualTo(Risk.MODERATE);
    }

    /** Speed and density meter the air by pressure: the same factor is in the mixture, lambda 1.2. */
    @Test
    void withSpeedAndDensityThePressureIsTheAir() {
        ACar car = calibratedCar()
                .assuming("loadModel", "SPEED_DENSITY")
                .withBoostTarget(200)
                .with(
                        Category.PRESSURE_SENSOR,
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 60),
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 50));
        assertThat(car.lambda()).isCloseTo(1.2, within(1e-9));
        Prediction bore = calibratedCar()
                .assuming("loadModel", "SPEED_DENSITY")
                .withIntake(80, 70)
                .predicted();
        assertThat(bore.mixture()).isNull();
        assertThat(bore.notComputable())
                .extracting(entry -> entry.why().key())
                .containsExactly("prediction.why.speed-density");
    }

    /** A target of 250 kPa asks a sensor of 40 kPa/V for more than the 5 V of its supply: the loop never closes. */
    @Test
    void aTargetBeyondASensorIsNotComputed() {
        Prediction beyond = calibratedCar()
                .withBoostTarget(250)
                .with(
                        Category.PRESSURE_SENSOR,
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 60),
                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 40))
                .predicted();
        assertThat(requireNonNull(beyond.boost()).reachedKpa()).isNull();
        assertThat(beyond.boost().readingRatio()).isCloseTo(0.66667, within(1e-5));
        assertThat(beyond.risk()).isEqualTo(Risk.HIGH);
    }

    /** 208.0462 g/s at lambda 0.85 and 14.7, four injectors of 440 cc/min: 76.19 % (mass balance, public calculators). */
    @ParameterizedTest
    @CsvSource({"440, 76.19, MODERATE", "394, 85.09, HIGH", "335, 100.07, EXTREME"})
    void duty(double flow, double percent, Risk risk) {
        Prediction prediction = calibratedCar()
                .assuming("peakAirflowGPerS", 208.0462)
                .assuming("peakLambda", 0.85)
                .withCylinders(4)
                .withMatching(Category.FUEL, fuel(0))
                .withInjectors(flow, flow)
                .predicted();
        assertThat(prediction.injectorDutyPercent()).isCloseTo(percent, within(0.005));
        assertThat(prediction.risk()).isEqualTo(risk);
    }

    @Test
    void dutyIsAbsentWhereTheFuelIsNotRecorded() {
        Prediction prediction = calibratedCar()
                .assuming("peakAirflowGPerS", 208.0462)
                .withCylinders(4)
                .withInjectors(440, 440)
                .predicted();
        assertThat(prediction.injectorDutyPercent()).isNull();
    }

    /** A regulator of 400 kPa passes 1.154701 of what 300 kPa do (orifice equation): 76.19 / 1.154701 = 65.98 %. */
    @Test
    void dutyGoesByThePressureOnTheCar() {
        ACar car = calibratedCar()
                .assuming("peakAirflowGPerS", 208.0462)
                .assuming("peakLambda", 0.85)
                .assuming("injectorCount", 4)
                .withMatching(Category.FUEL, fuel(0))
                .withMatching(Category.FUEL_PRESSURE_REGULATOR, Map.of("basePressureKpa", 400, "reference", "MANIFOLD"))
                .withInjectors(440, 440);
        assertThat(car.predicted().injectorDutyPercent()).isCloseTo(65.98, within(0.005));
    }

    @ParameterizedTest
    @EnumSource(
            value = Category.class,
            names = {"ECU", "FUEL"})
    void nobodyKnowsWhatIsInTheEcuOrTheTank(Category category) {
        assertThat(calibratedCar()
                        .with(category, Side.UNKNOWN, Side.FACTORY)
                        .predicted()
                        .risk())
                .isEqualTo(Risk.EXTREME);
    }

    @ParameterizedTest
    @EnumSource(
            value = Category.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"COSMETIC"})
    void whatHasNoFormulaIsGradedByItsGroup(Category category) {
        Prediction other = calibratedCar().with(category, Map.of(), Map.of()).predicted();
        Risk risk = switch (category.born()) {
            case AIR_METERING, FUEL_METERING, BOOST, COMBUSTION, UNSORTED -> Risk.HIGH;
            case EXHAUST, CONTROL -> Risk.MODERATE;
            case DRIVELINE, NO_EFFECT -> Risk.LOW;
        };
        assertThat(other.risk()).as(category.name()).isEqualTo(risk);
        assertThat(other.mixture()).as(category.name()).isNull();
    }

    /** However small the risk: the sentence that it opens nothing is always there. */
    @ParameterizedTest
    @EnumSource(
            value = Category.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"COSMETIC"})
    void everyPredictionSaysThatItOpensNothing(Category category) {
        ACar car = calibratedCar().with(category, Side.part(Map.of()), Side.FACTORY);
        assertThat(keys(car)).endsWith("prediction.opens-nothing");
    }

    @Test
    void aValveThatKeepsTheMeteredAirIsNotSaidToMakeItRich() {
        assertThat(keys(calibratedCar()
                        .with(Category.BYPASS_VALVE, Map.of("ventsTo", "INTAKE"), Map.of("ventsTo", "INTAKE"))))
                .doesNotContain("prediction.effect.BYPASS_VALVE");
        assertThat(keys(calibratedCar()
                        .with(Category.BYPASS_VALVE, Map.of("ventsTo", "ATMOSPHERE"), Map.of("ventsTo", "INTAKE"))))
                .contains("prediction.effect.BYPASS_VALVE");
    }

    private static List<String> keys(ACar car) {
        return car.predicted().sentences().stream().map(Sentence::key).toList();
    }
}
