package org.bayhold.prediction;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.AttributeSet;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.ChoiceAttribute;
import org.bayhold.catalog.CurveAttribute;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.catalog.PartAttributes;
import org.bayhold.catalog.Place;
import org.bayhold.catalog.TextAttribute;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * No accepted input makes a number that is none. A few thousand cars in the ordinary run;
 * {@code -Dprediction.cars=1000000} for many.
 */
class RandomCarsTest {
    private static final int CARS = Integer.getInteger("prediction.cars", 5_000);
    private static final Category[] CATEGORIES = Category.values();
    private static final Category[] WITH_FORMULA = {
        Category.AIR_INTAKE,
        Category.AIRFLOW_SENSOR,
        Category.INJECTORS,
        Category.FUEL_PRESSURE_REGULATOR,
        Category.FUEL,
        Category.PRESSURE_SENSOR
    };

    private final long seed = Seed.OF_THIS_RUN;
    private SplittableRandom random = new SplittableRandom(seed);
    private int withMixture;
    private int withIdle;
    private int withBoost;
    private int withDuty;
    private int withLine;
    private int withTable;

    @Test
    void noCarMakesANumberThatIsNone() throws ReflectiveOperationException {
        for (int n = 0; n < CARS; n++) {
            random = new SplittableRandom(seed + n);
            Build build = build();
            Prediction prediction = Predictions.of(build).orElse(null);
            if (prediction != null) {
                String where = Seed.repeats(seed + n) + " -Dprediction.cars=1";
                assertFinite(prediction, where);
                assertSound(prediction, where);
                count(prediction);
                Sweep sweep = Sweep.of(build, prediction);
                assertFinite(sweep, where);
                assertAgrees(sweep, prediction, where);
            }
        }
        if (CARS >= 5_000) {
            // the cars do reach every number
            assertThat(List.of(withMixture, withIdle, withBoost, withDuty, withLine, withTable))
                    .allMatch(count -> count > CARS / 100);
        }
    }

    private void count(Prediction prediction) {
        withMixture += prediction.mixture() == null ? 0 : 1;
        withIdle += prediction.mixtureAtIdle() == null ? 0 : 1;
        withBoost += prediction.boost() == null ? 0 : 1;
        withDuty += prediction.injectorDutyPercent() == null ? 0 : 1;
    }

    /** The pictures, and the figures above them. {@code docs/prediction.md, P18}. */
    private void assertAgrees(Sweep sweep, Prediction prediction, String where) {
        Sweep.DutyLine duty = sweep.duty();
        assertThat(duty == null).as(where).isEqualTo(prediction.injectorDutyPercent() == null);
        assertThat(duty == null).as(where).isNotEqualTo(sweep.dutyNeeds().isEmpty());
        Sweep.MixtureLine line = sweep.mixture();
        if (line == null) {
            return;
        }
        withLine++;
        double before = 0;
        for (Sweep.Point point : line.points()) {
            assertThat(point.flowGPerS()).as(where).isGreaterThan(before).isBetween(line.fromGPerS(), line.toGPerS());
            before = point.flowGPerS();
        }
        for (Sweep.Spot spot : line.spots()) {
            Mixture there = spot.mixture();
            if (there != null && spot.named() == Sweep.Named.IDLE) {
                assertThat(there).as(where).isEqualTo(prediction.mixtureAtIdle());
            } else if (there != null) {
                assertThat(line.points()).as(where).contains(new Sweep.Point(spot.flowGPerS(), there));
            }
        }
        withTable += line.tableEndsGPerS() == null ? 0 : 1;
        // without a table that goes by the airflow, the line is the lambda at load
        boolean goesByTheAirflow = prediction.trace().stream().anyMatch(step -> step.formula() == Formula.TRANSFER);
        if (!goesByTheAirflow && line.tableEndsGPerS() == null && line.tableBeginsGPerS() == null) {
            assertThat(line.points()).as(where).extracting(Sweep.Point::mixture).containsOnly(prediction.mixture());
        }
    }

    private static void assertSound(Prediction prediction, String where) {
        Mixture mixture = prediction.mixture();
        if (mixture == null) {
            assertThat(prediction.alone().isEmpty()
                            || !prediction.notComputable().isEmpty())
                    .as(where)
                    .isTrue();
        } else {
            assertThat(mixture.lambda()).as(where).isPositive();
            Double low = mixture.lambdaLow();
            Double high = mixture.lambdaHigh();
            assertThat(low == null || low < mixture.lambda()).as(where).isTrue();
            assertThat(high == null || high > mixture.lambda()).as(where).isTrue();
        }
        Double duty = prediction.injectorDutyPercent();
        assertThat(duty == null || duty > 0).as(where).isTrue();
    }

    /** Every number of every record in it, however deep. */
    private static void assertFinite(@Nullable Object value, String where) throws ReflectiveOperationException {
        if (value instanceof Double number) {
            if (!Double.isFinite(number)) {
                throw new AssertionError(number + ", " + where);
            }
        } else if (value instanceof List<?> list) {
            for (Object entry : list) {
                assertFinite(entry, where);
            }
        } else if (value instanceof Record holder) {
            for (RecordComponent component : holder.getClass().getRecordComponents()) {
                assertFinite(component.getAccessor().invoke(holder), where);
            }
        }
    }

    private Build build() {
        List<Seat> seats = new ArrayList<>();
        for (Category category : WITH_FORMULA) {
            seats.add(seat(Place.of(category)));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            Place place = new Place(CATEGORIES[random.nextInt(CATEGORIES.length)], "second");
            if (seats.stream().noneMatch(seat -> seat.place().equals(place))) {
                seats.add(seat(place));
            }
        }
        return new Build(
                seats,
                values(Assumptions.ALL, "assumes"),
                random.nextInt(4) == 0 ? null : any(1, 1_000),
                random.nextInt(4) == 0 ? null : random.nextInt(1, 17));
    }

    private Seat seat(Place place) {
        Category category = place.category();
        Side fitted = side(category);
        boolean differs = random.nextInt(3) > 0;
        EffectGroup group = random.nextInt(20) == 0 ? EffectGroup.NO_EFFECT : category.born();
        return new Seat(place, group, fitted, differs && random.nextInt(8) > 0 ? side(category) : fitted, differs);
    }

    private Side side(Category category) {
        return switch (random.nextInt(24)) {
            case 0 -> Side.FACTORY;
            case 1 -> Side.NONE;
            case 2 -> Side.UNKNOWN;
            default -> Side.part(values(PartAttributes.of(category), "attributes"));
        };
    }

    /** Values that the product takes: it is asked. */
    private Map<String, Object> values(AttributeSet set, String field) {
        Map<String, Object> values = new HashMap<>();
        for (Attribute attribute : set.attributes()) {
            if (random.nextInt(10) > 0) {
                values.put(attribute.name(), value(attribute));
            }
        }
        set.holdAll(field, values);
        return values;
    }

    private Object value(Attribute attribute) {
        if (attribute instanceof NumberAttribute number) {
            return switch (random.nextInt(6)) {
                case 0 -> number.least();
                case 1 -> number.most();
                default -> any(number.least(), number.most());
            };
        } else if (attribute instanceof ChoiceAttribute choice) {
            // mostly the first: the engines that the formulas are for
            return choice.choices()
                    .get(random.nextInt(8) == 0 ? choice.choices().size() - 1 : 0);
        } else if (attribute instanceof CurveAttribute) {
            return curve();
        } else if (attribute instanceof TextAttribute) {
            return random.nextBoolean() ? "STRAIGHT" : "after bend";
        }
        throw new AssertionError(attribute);
    }

    private double any(double least, double most) {
        return least > 0 && random.nextBoolean()
                ? Math.min(most, Math.max(least, least * Math.pow(most / least, random.nextDouble())))
                : least + random.nextDouble() * (most - least);
    }

    /** From next to flat to next to upright, in volts, seldom in hertz. */
    private List<List<Double>> curve() {
        int points = random.nextInt(4, 12);
        double scale = random.nextInt(10) == 0 ? 1_000 : 4.0 / points;
        List<List<Double>> rows = new ArrayList<>();
        double signal = random.nextBoolean() ? 0 : random.nextDouble() * scale;
        double flow = random.nextBoolean() ? 0 : random.nextDouble() * 4;
        for (int i = 0; i < points; i++) {
            rows.add(List.of(signal, flow));
            signal += Math.max(2e-6, scale * Math.pow(10, random.nextDouble(-5, 0)));
            flow += Math.max(2e-6, 400.0 * Math.pow(10, random.nextDouble(-7, 0)));
        }
        return rows;
    }
}
