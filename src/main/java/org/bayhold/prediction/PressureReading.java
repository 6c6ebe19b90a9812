package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.KPA_AT_ZERO_VOLTS;
import static org.bayhold.catalog.PartAttributes.KPA_PER_VOLT;
import static org.bayhold.prediction.Input.Origin.ASSUMED;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** A pressure sensor that is read with the scale of another. {@code docs/prediction.md, P9}. */
final class PressureReading {
    /** A sensor on a supply of 5 V gives no more, and none gives less than nothing. */
    private static final double SUPPLY_VOLTS = 5;
    /** A target is absolute: less is none. */
    private static final double SMALLEST_TARGET_KPA = 1;

    private PressureReading() {}

    /** A linear sensor: absolute pressure at 0 V, and for each volt. */
    record Scale(double kpaAtZeroVolts, double kpaPerVolt) {
        double kpa(double volts) {
            return kpaAtZeroVolts + kpaPerVolt * volts;
        }

        double volts(double kpa) {
            return (kpa - kpaAtZeroVolts) / kpaPerVolt;
        }
    }

    /** Believed over true absolute pressure; empty where the sensor cannot give it or the ECU reads no pressure. */
    static OptionalDouble readingRatio(Scale inst, Scale cal, double trueKpa) {
        double volts = inst.volts(trueKpa);
        double believed = inst.equals(cal) ? trueKpa : cal.kpa(volts);
        return isSignal(volts) && trueKpa > 0 && believed > trueKpa * 1e-6
                ? OptionalDouble.of(believed / trueKpa)
                : OptionalDouble.empty();
    }

    /** The true absolute pressure at which the ECU believes the target reached; empty where that never happens. */
    static OptionalDouble reached(Scale inst, Scale cal, double targetKpa) {
        double volts = cal.volts(targetKpa);
        double reached = inst.equals(cal) ? targetKpa : inst.kpa(volts);
        return isSignal(volts) && reached > 0 ? OptionalDouble.of(reached) : OptionalDouble.empty();
    }

    private static boolean isSignal(double volts) {
        return volts >= 0 && volts <= SUPPLY_VOLTS;
    }

    /** What a sensor that differs does at the boost target; empty where nothing can be said, which is then on record. */
    static Optional<Prediction.Boost> of(Seat sensor, Workings workings) {
        Optional<Scale> inst = scale(workings.fitted(sensor, KPA_AT_ZERO_VOLTS), workings.fitted(sensor, KPA_PER_VOLT));
        Optional<Scale> cal =
                scale(workings.calibrated(sensor, KPA_AT_ZERO_VOLTS), workings.calibrated(sensor, KPA_PER_VOLT));
        Double target = workings.build.boostTargetKpa();
        if (target == null || target < SMALLEST_TARGET_KPA) {
            workings.cannot(sensor.place(), new Sentence("prediction.why.no-boost-target", List.of()));
        }
        if (inst.isEmpty() || cal.isEmpty() || target == null || target < SMALLEST_TARGET_KPA) {
            return Optional.empty();
        }
        return of(sensor, workings, inst.get(), cal.get(), target);
    }

    private static Optional<Prediction.Boost> of(Seat sensor, Workings workings, Scale inst, Scale cal, double target) {
        Input[] inputs = {
            Input.fitted(KPA_AT_ZERO_VOLTS.name(), inst.kpaAtZeroVolts()),
            Input.fitted(KPA_PER_VOLT.name(), inst.kpaPerVolt()),
            Input.calibrated(KPA_AT_ZERO_VOLTS.name(), cal.kpaAtZeroVolts()),
            Input.calibrated(KPA_PER_VOLT.name(), cal.kpaPerVolt()),
            new Input("boostTargetKpa", target, ASSUMED)
        };
        @Nullable Double ratio = step(workings, Formula.BOOST_READING, sensor, readingRatio(inst, cal, target), inputs);
        @Nullable Double reached = step(workings, Formula.BOOST_REACHED, sensor, reached(inst, cal, target), inputs);
        @Nullable Double excess = reached == null
                ? null
                : Double.valueOf(workings.step(
                        Formula.BOOST_EXCESS,
                        sensor.place(),
                        (reached / target - 1) * 100,
                        Input.computed("boostReachedKpa", reached),
                        new Input("boostTargetKpa", target, ASSUMED)));
        if (ratio == null || reached == null) {
            workings.cannot(sensor.place(), Sentence.of("prediction.why.sensor-range", new Amount(target, "kPa", 0)));
        }
        return ratio == null && reached == null
                ? Optional.empty()
                : Optional.of(new Prediction.Boost(ratio, reached, excess));
    }

    private static @Nullable Double step(
            Workings workings, Formula formula, Seat sensor, OptionalDouble value, Input... inputs) {
        return value.isEmpty() ? null : workings.step(formula, sensor.place(), value.getAsDouble(), inputs);
    }

    private static Optional<Scale> scale(OptionalDouble zero, OptionalDouble slope) {
        return zero.isEmpty() || slope.isEmpty()
                ? Optional.empty()
                : Optional.of(new Scale(zero.getAsDouble(), slope.getAsDouble()));
    }
}
