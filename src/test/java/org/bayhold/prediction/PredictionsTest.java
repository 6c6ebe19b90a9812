package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bayhold.prediction.ACar.and;
import static org.bayhold.prediction.ACar.calibratedCar;
import static org.bayhold.prediction.ACar.fuel;
import static org.bayhold.prediction.ACar.injectors;
import static org.bayhold.prediction.ACar.intake;

import java.util.List;
import java.util.Map;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Prediction.Mixture;
import org.junit.jupiter.api.Test;

/** {@code docs/prediction.md}, P1 to P13: what is multiplied, what is left out, and that nothing is 1 in silence. */
class PredictionsTest {
    @Test
    void nothingDiffersAndNothingIsPredicted() {
        assertThat(Predictions.of(calibratedCar()
                        .withMatching(Category.AIR_INTAKE, intake(80))
                        .build()))
                .isEmpty();
    }

    @Test
    void whatHasNoEffectIsNoMismatch() {
        Seat colour =
                new Seat(Place.of(Category.COSMETIC), EffectGroup.NO_EFFECT, Side.part(Map.of()), Side.FACTORY, true);
        assertThat(Predictions.of(calibratedCar().with(colour).build())).isEmpty();
    }

    @Test
    void aWideHousingIsLean() {
        Prediction wide = calibratedCar().withIntake(73, 66).predicted();
        assertThat(wide.ratios().airMeter()).isCloseTo(0.817414, within(5e-7));
        assertThat(wide.ratios().fuelDelivery()).isNull();
        assertThat(wide.ratios().stoichiometric()).isNull();
        assertThat(mixture(wide).lambda()).isCloseTo(1.223370, within(5e-7));
        assertThat(mixture(wide).trimDemandPercent()).isCloseTo(22.337, within(5e-4));
        assertThat(mixture(wide).authorityUsedPercent()).isCloseTo(89.348, within(5e-4));
        assertThat(wide.notComputable()).isEmpty();
        assertThat(keys(wide)).contains("prediction.lean", "prediction.within-authority", "prediction.opens-nothing");
    }

    @Test
    void theSquareHasABandAlsoAtEqualBore() {
        Prediction equal = calibratedCar().withIntake(70, 70).predicted();
        assertThat(equal.ratios().airMeter()).isEqualTo(1.0);
        assertThat(equal.ratios().airMeterBandPercent()).isEqualTo(10);
        assertThat(mixture(equal).lambdaLow()).isCloseTo(1 / 1.1, within(1e-12));
        assertThat(mixture(equal).lambdaHigh()).isCloseTo(1 / 0.9, within(1e-12));
    }

    @Test
    void surroundingsThatDifferWidenTheBandAndAreSaid() {
        Prediction bent = calibratedCar()
                .with(Category.AIR_INTAKE, and(intake(70), "ductShape", "BENT"), intake(70))
                .predicted();
        assertThat(bent.ratios().airMeterBandPercent()).isEqualTo(20);
        assertThat(why(bent, Category.AIR_INTAKE)).containsExactly("prediction.why.surroundings");
        assertThat(bent.risk()).isEqualTo(Risk.HIGH);
    }

    @Test
    void surroundingsThatAreNotRecordedAreNotTakenAsEqual() {
        Prediction bare = calibratedCar()
                .with(Category.AIR_INTAKE, Map.of("sensorBoreMm", 70), Map.of("sensorBoreMm", 70))
                .predicted();
        assertThat(bare.ratios().airMeterBandPercent()).isEqualTo(20);
        assertThat(why(bare, Category.AIR_INTAKE)).containsExactly("prediction.why.surroundings");
    }

    @Test
    void whatIsNotRecordedIsLeftOutAndNeverOne() {
        Prediction unknown = calibratedCar()
                .with(Category.AIR_INTAKE, ACar.SURROUNDINGS, intake(70))
                .predicted();
        assertThat(unknown.mixture()).isNull();
        assertThat(unknown.ratios().airMeter()).isNull();
        assertThat(why(unknown, Category.AIR_INTAKE)).containsExactly("prediction.why.not-recorded-on-the-car");
        assertThat(keys(unknown)).contains("prediction.no-mixture", "prediction.not-all-computed");
    }

    @Test
    void whatIsLeftOutDoesNotHideWhatIsKnown() {
        Prediction half = calibratedCar()
                .with(Category.AIR_INTAKE, Side.part(intake(80)), Side.FACTORY)
                .withInjectors(650, 440)
                .predicted();
        assertThat(half.ratios().airMeter()).isNull();
        assertThat(half.ratios().fuelDelivery()).isCloseTo(1.477273, within(5e-7));
        assertThat(mixture(half).lambda()).isCloseTo(0.676923, within(5e-7));
        assertThat(why(half, Category.AIR_INTAKE)).contains("prediction.why.not-recorded-by-the-calibration");
    }

    @Test
    void injectorsOfAnotherRatedPressureAreComparedAtOne() {
        Prediction other = calibratedCar()
                .with(Category.INJECTORS, Map.of("flowCcPerMin", 508.068, "ratedPressureKpa", 400), injectors(440))
                .predicted();
        assertThat(other.ratios().fuelDelivery()).isCloseTo(1, within(1e-6));
    }

    @Test
    void deadTimesCountAtIdle() {
        Prediction quick = calibratedCar()
                .assuming("idlePulseMs", 2.0)
                .with(
                        Category.INJECTORS,
                        and(injectors(440), "deadTimeMs", 0.8),
                        and(injectors(440), "deadTimeMs", 1.0))
                .predicted();
        assertThat(quick.ratios().fuelDelivery()).isEqualTo(1.0);
        assertThat(quick.ratios().fuelDeliveryAtIdle()).isCloseTo(1.2, within(1e-12));
        assertThat(requireNonNull(quick.mixtureAtIdle()).trimDemandPercent()).isCloseTo(-16.667, within(5e-4));
        assertThat(quick.risk()).isEqualTo(Risk.HIGH);
    }

    @Test
    void aPulseThatIsNoLongerThanTheDeadTimeHasNoRatio() {
        Prediction shut = calibratedCar()
                .assuming("idlePulseMs", 1.0)
                .with(
                        Category.INJECTORS,
                        and(injectors(440), "deadTimeMs", 1.0),
                        and(injectors(440), "deadTimeMs", 0.8))
                .predicted();
        assertThat(shut.mixtureAtIdle()).isNull();
        assertThat(why(shut, Category.INJECTORS)).containsExactly("prediction.why.pulse");
    }

    /** 400 kPa of the rail, 120 kPa of boost, no reference to the manifold: 280 kPa are left (gauge arithmetic). */
    @Test
    void aRegulatorThatIsHeldAgainstTheAtmosphereLosesTheBoost() {
        Prediction lost = calibratedCar()
                .assuming("manifoldGaugeKpa", 120)
                .with(Category.FUEL_PRESSURE_REGULATOR, regulator(400, "ATMOSPHERE"), regulator(400, "MANIFOLD"))
                .predicted();
        assertThat(lost.ratios().fuelDelivery()).isCloseTo(0.836660, within(5e-7));
        Prediction fromTarget = calibratedCar()
                .withBoostTarget(221.325)
                .with(Category.FUEL_PRESSURE_REGULATOR, regulator(400, "ATMOSPHERE"), regulator(300, "MANIFOLD"))
                .predicted();
        assertThat(fromTarget.ratios().fuelDelivery()).isCloseTo(0.966092, within(5e-7));
    }

    @Test
    void aRegulatorThatIsHeldAgainstTheAtmosphereNeedsAManifoldPressure() {
        Prediction unsaid = calibratedCar()
                .with(Category.FUEL_PRESSURE_REGULATOR, regulator(400, "ATMOSPHERE"), regulator(300, "MANIFOLD"))
                .predicted();
        assertThat(unsaid.mixture()).isNull();
        assertThat(why(unsaid, Category.FUEL_PRESSURE_REGULATOR))
                .containsExactly("prediction.why.no-manifold-pressure");
        Prediction gone = calibratedCar()
                .assuming("manifoldGaugeKpa", 300)
                .with(Category.FUEL_PRESSURE_REGULATOR, regulator(300, "ATMOSPHERE"), regulator(300, "MANIFOLD"))
                .predicted();
        assertThat(why(gone, Category.FUEL_PRESSURE_REGULATOR)).containsExactly("prediction.why.no-fuel-pressure");
    }

    @Test
    void aRegulatorInPlaceOfAnUnrecordedOneIsComparedWithWhatTheRevisionAssumes() {
        ACar car = calibratedCar()
                .with(Category.FUEL_PRESSURE_REGULATOR, Side.part(regulator(400, "MANIFOLD")), Side.FACTORY);
        assertThat(car.predicted().mixture()).isNull();
        assertThat(car.assuming("fuelPressureKpa", 300).predicted().ratios().fuelDelivery())
                .isCloseTo(1.154701, within(5e-7));
    }

    @Test
    void fuelIsDenserAndAsksForLessAir() {
        Prediction blend =
                calibratedCar().with(Category.FUEL, fuel(50), fuel(0)).predicted();
        assertThat(blend.ratios().stoichiometric()).isCloseTo(14.7 / 11.768, within(1e-4));
        assertThat(blend.ratios().fuelDelivery()).isCloseTo(Math.sqrt(0.767 / 0.745), within(1e-9));
        assertThat(mixture(blend).lambda()).isCloseTo(14.7 / 11.768 / Math.sqrt(0.767 / 0.745), within(1e-4));
    }

    @Test
    void placesOfOneCategoryThatDoNotChangeAlikeHaveNoOneNumber() {
        Seat second = new Seat(
                new Place(Category.INJECTORS, "second rail"),
                Category.INJECTORS.born(),
                Side.part(injectors(440)),
                Side.part(injectors(440)),
                false);
        Prediction one = calibratedCar().withInjectors(550, 440).with(second).predicted();
        assertThat(one.ratios().fuelDelivery()).isNull();
        assertThat(why(one, Category.INJECTORS)).containsExactly("prediction.why.places-differ");
        Seat changed = new Seat(second.place(), second.group(), Side.part(injectors(550)), second.fitted(), true);
        Prediction both = calibratedCar().withInjectors(550, 440).with(changed).predicted();
        assertThat(both.ratios().fuelDelivery()).isCloseTo(1.25, within(1e-12));
    }

    @Test
    void compressionIgnitionHasNoFormula() {
        Prediction diesel = calibratedCar()
                .assuming("ignition", "COMPRESSION")
                .withInjectors(650, 440)
                .predicted();
        assertThat(diesel.mixture()).isNull();
        assertThat(why(diesel, Category.INJECTORS)).containsExactly("prediction.why.compression-ignition");
        assertThat(diesel.risk()).isEqualTo(Risk.HIGH);
    }

    /** Each number on a page can be traced: what the chain says follows from the steps that are written down. */
    @Test
    void everyNumberHasItsStep() {
        Prediction both = calibratedCar()
                .withIntake(73, 66)
                .withInjectors(650, 440)
                .with(Category.FUEL, fuel(10), fuel(0))
                .predicted();
        assertThat(both.trace())
                .extracting(Step::formula)
                .contains(
                        Formula.HOUSING,
                        Formula.BAND,
                        Formula.INJECTOR_FLOW,
                        Formula.FUEL_DENSITY,
                        Formula.STOICHIOMETRIC_RATIO,
                        Formula.AIR_METER_RATIO,
                        Formula.FUEL_DELIVERY_RATIO,
                        Formula.LAMBDA,
                        Formula.TRIM_DEMAND,
                        Formula.AUTHORITY_USED);
        assertThat(both.trace()).doesNotHaveDuplicates();
        Step lambda = both.trace().stream()
                .filter(step -> step.formula() == Formula.LAMBDA)
                .findFirst()
                .orElseThrow();
        assertThat(lambda.value()).isEqualTo(mixture(both).lambda());
        assertThat(lambda.inputs())
                .extracting(Input::value)
                .containsExactly(
                        both.ratios().airMeter(),
                        both.ratios().fuelDelivery(),
                        both.ratios().stoichiometric());
    }

    private static Map<String, Object> regulator(double kpa, String reference) {
        return Map.of("basePressureKpa", kpa, "reference", reference);
    }

    private static Mixture mixture(Prediction prediction) {
        return requireNonNull(prediction.mixture());
    }

    private static List<String> why(Prediction prediction, Category category) {
        return prediction.notComputable().stream()
                .filter(entry -> entry.place().category() == category)
                .map(entry -> entry.why().key())
                .toList();
    }

    private static List<String> keys(Prediction prediction) {
        return prediction.sentences().stream().map(Sentence::key).toList();
    }
}
