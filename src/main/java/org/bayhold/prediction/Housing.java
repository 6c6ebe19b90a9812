package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.DUCT_SHAPE;
import static org.bayhold.catalog.PartAttributes.FILTER_KIND;
import static org.bayhold.catalog.PartAttributes.SENSOR_BORE_MM;
import static org.bayhold.catalog.PartAttributes.SENSOR_PLACEMENT;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.catalog.TextAttribute;

/** The tube in which the airflow sensor sits, and what is around it. {@code docs/prediction.md, P5 and P7}. */
final class Housing {
    private static final List<TextAttribute> SURROUNDINGS = List.of(FILTER_KIND, SENSOR_PLACEMENT, DUCT_SHAPE);
    private static final double BAND_OF_EQUALS_PERCENT = 10;
    private static final double BAND_PERCENT = 20;

    private final Workings workings;

    Housing(Workings workings) {
        this.workings = workings;
    }

    /** The bore ratio of an intake that differs; empty where its bore cannot be compared, which is then on record. */
    Optional<Factor> ofIntake(Seat intake) {
        List<String> unlike = unlike(intake.fitted(), intake.reference());
        if (!unlike.isEmpty()) {
            workings.cannot(intake.place(), Sentence.of("prediction.why.surroundings", String.join(", ", unlike)));
        }
        if (!recordsABore(intake) && sensorHasItsOwn(intake)) {
            workings.cannot(intake.place(), new Sentence("prediction.why.surroundings-of-a-housing", List.of()));
            return Optional.empty();
        }
        return ratio(intake);
    }

    /** From the bores of both sides; what is not recorded is said. */
    Optional<Factor> ratio(Seat seat) {
        OptionalDouble inst = workings.fitted(seat, SENSOR_BORE_MM);
        OptionalDouble cal = workings.calibrated(seat, SENSOR_BORE_MM);
        if (inst.isEmpty() || cal.isEmpty()) {
            return Optional.empty();
        }
        double ratio = workings.step(
                Formula.HOUSING,
                seat.place(),
                ratio(inst.getAsDouble(), cal.getAsDouble()),
                Input.fitted(SENSOR_BORE_MM.name(), inst.getAsDouble()),
                Input.calibrated(SENSOR_BORE_MM.name(), cal.getAsDouble()));
        return Optional.of(Factor.everywhere(ratio));
    }

    /** Air believed over true air. */
    static double ratio(double boreInstMm, double boreCalMm) {
        double bores = boreCalMm / boreInstMm;
        return bores * bores;
    }

    /** How far the square may stray, in percent; "the same diameter" is thus never "the same reading". */
    double band(Place housing) {
        boolean equal = workings.build
                .at(new Place(Category.AIR_INTAKE, housing.position()))
                .filter(intake -> unlike(intake.fitted(), intake.reference()).isEmpty())
                .isPresent();
        return workings.step(Formula.BAND, housing, equal ? BAND_OF_EQUALS_PERCENT : BAND_PERCENT);
    }

    static boolean recordsABore(Seat seat) {
        return SENSOR_BORE_MM.in(seat.fitted().attributes()).isPresent()
                || SENSOR_BORE_MM.in(seat.reference().attributes()).isPresent();
    }

    private boolean sensorHasItsOwn(Seat intake) {
        return workings.build
                .at(new Place(Category.AIRFLOW_SENSOR, intake.place().position()))
                .filter(sensor -> SENSOR_BORE_MM
                                .in(sensor.fitted().attributes())
                                .isPresent()
                        && SENSOR_BORE_MM.in(sensor.reference().attributes()).isPresent())
                .isPresent();
    }

    /** The surroundings that are not known to be equal. */
    private static List<String> unlike(Side fitted, Side calibratedFor) {
        Map<String, Object> one = fitted.attributes();
        Map<String, Object> other = calibratedFor.attributes();
        return SURROUNDINGS.stream()
                .filter(what -> what.in(one).isEmpty() || !what.in(one).equals(what.in(other)))
                .map(TextAttribute::name)
                .toList();
    }
}
