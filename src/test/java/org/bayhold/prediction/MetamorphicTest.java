package org.bayhold.prediction;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** What must hold whatever the numbers are. */
class MetamorphicTest {
    private static final int ROUNDS = 500;
    private final long seed = Seed.OF_THIS_RUN;
    private final SplittableRandom random = new SplittableRandom(seed);

    /** Parts that the chain knows, each with a maker of any of its kind. */
    private final Map<Category, Supplier<Map<String, Object>>> kinds = Map.of(
            Category.AIR_INTAKE, () -> ACar.intake(any(20, 200)),
            Category.INJECTORS, () -> Map.of("flowCcPerMin", any(20, 20_000), "ratedPressureKpa", any(20, 100_000)),
            Category.FUEL_PRESSURE_REGULATOR,
                    () -> Map.of("basePressureKpa", any(20, 100_000), "reference", "MANIFOLD"),
            Category.FUEL, () -> ACar.fuel(any(0, 100)));

    @Test
    void swappingWhatIsFittedAndWhatWasCalibratedForInvertsLambda() {
        everyKind((category, part) -> {
            Map<String, Object> one = part.get();
            Map<String, Object> other = part.get();
            assertThat(lambda(category, one, other) * lambda(category, other, one))
                    .as("%s %s %s, %s", category, one, other, Seed.repeats(seed))
                    .isCloseTo(1, within(1e-9));
        });
    }

    @Test
    void twoChangesOneAfterTheOtherAreTheirProduct() {
        everyKind((category, part) -> {
            Map<String, Object> a = part.get();
            Map<String, Object> b = part.get();
            Map<String, Object> c = part.get();
            assertThat(lambda(category, b, a) * lambda(category, c, b))
                    .as("%s %s %s %s, %s", category, a, b, c, Seed.repeats(seed))
                    .isCloseTo(lambda(category, c, a), withinPercentage(1e-9));
        });
    }

    @Test
    void theSamePartIsExactlyOne() {
        everyKind((category, part) -> {
            Map<String, Object> same = part.get();
            assertThat(lambda(category, same, same)).as("%s %s", category, same).isEqualTo(1.0);
        });
    }

    @Test
    void severalPartsAreTheProductOfEachAlone() {
        for (int n = 0; n < ROUNDS; n++) {
            ACar car = ACar.calibratedCar();
            kinds.forEach((category, part) -> car.with(category, part.get(), part.get()));
            List<Alone> alone = car.predicted().alone();
            assertThat(alone).hasSize(kinds.size());
            assertThat(alone.stream()
                            .mapToDouble(part -> part.mixture().lambda())
                            .reduce(1, (x, y) -> x * y))
                    .as("round %d, %s", n, Seed.repeats(seed))
                    .isCloseTo(car.lambda(), withinPercentage(1e-9));
        }
    }

    @Test
    void aWiderHousingIsLeanerAndALargerInjectorRicher() {
        for (int n = 0; n < ROUNDS; n++) {
            double small = any(20, 100);
            double large = small * any(1.001, 2);
            assertThat(ACar.calibratedCar().withIntake(large, small).lambda()).isGreaterThan(1);
            assertThat(ACar.calibratedCar().withInjectors(large, small).lambda())
                    .isLessThan(1);
        }
    }

    @Test
    void theOrderOfThePartsChangesNothing() {
        for (int n = 0; n < ROUNDS; n++) {
            double bore = any(50, 100);
            double flow = any(300, 1000);
            Prediction one = ACar.calibratedCar()
                    .withIntake(bore, 70)
                    .withInjectors(flow, 440)
                    .predicted();
            Prediction other = ACar.calibratedCar()
                    .withInjectors(flow, 440)
                    .withIntake(bore, 70)
                    .predicted();
            assertThat(other.mixture()).isEqualTo(one.mixture());
            assertThat(other.risk()).isEqualTo(one.risk());
        }
    }

    private interface Law {
        void holdsFor(Category category, Supplier<Map<String, Object>> part);
    }

    private void everyKind(Law law) {
        for (int n = 0; n < ROUNDS; n++) {
            kinds.forEach(law::holdsFor);
        }
    }

    private static double lambda(Category category, Map<String, Object> fitted, Map<String, Object> calibratedFor) {
        Prediction prediction =
                ACar.calibratedCar().with(category, fitted, calibratedFor).predicted();
        return requireNonNull(prediction.mixture()).lambda();
    }

    private double any(double least, double most) {
        return least == 0 ? random.nextDouble() * most : least * Math.pow(most / least, random.nextDouble());
    }
}
