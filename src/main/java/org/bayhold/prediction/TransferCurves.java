package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.TRANSFER;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bayhold.catalog.Curve;
import org.jspecify.annotations.Nullable;

/** An airflow sensor that is read with the curve of another. {@code docs/prediction.md, P6}. */
final class TransferCurves {
    /** A supply of 5 V or 12 V gives no more; a frequency gives no less at its top. */
    private static final double HIGHEST_VOLTAGE = 20;
    /** Believed over true: what reads as no air at all has no ratio. */
    private static final double READS_NOTHING = 1e-6;

    private final MonotoneCubic inst;
    private final MonotoneCubic cal;
    private final boolean same;

    TransferCurves(Curve inst, Curve cal) {
        this.inst = new MonotoneCubic(inst);
        this.cal = new MonotoneCubic(cal);
        this.same = inst.equals(cal);
    }

    /** Air believed over true air at one flow, or why there is none. */
    record Point(
            double flowGPerS,
            @Nullable Double ratio,
            @Nullable Sentence why) {
        static Point of(double flow, double ratio) {
            return new Point(flow, ratio, null);
        }

        static Point without(double flow, Sentence why) {
            return new Point(flow, null, why);
        }
    }

    boolean areOfOneKind() {
        return (inst.last() <= HIGHEST_VOLTAGE) == (cal.last() <= HIGHEST_VOLTAGE);
    }

    /** Never beyond the ends of a table. */
    Point at(double flow) {
        if (flow > inst.highest()) {
            return saturatedAt(flow, inst.highest());
        }
        if (flow < inst.lowest()) {
            return belowTable(flow, inst.lowest());
        }
        if (same) {
            return Point.of(flow, 1); // a signal that is read with the curve that gave it, not with its rounding
        }
        double signal = inst.inverse(flow);
        if (signal > cal.last()) {
            return saturatedAt(flow, inst.at(cal.last()));
        }
        if (signal < cal.first()) {
            return belowTable(flow, inst.at(Math.min(cal.first(), inst.last())));
        }
        double ratio = cal.at(signal) / flow;
        return ratio < READS_NOTHING
                ? Point.without(flow, Sentence.of("prediction.why.reads-nothing", gPerS(flow)))
                : Point.of(flow, ratio);
    }

    private static Amount gPerS(double flow) {
        return new Amount(flow, "g/s", 1);
    }

    private static Point saturatedAt(double flow, double limit) {
        return Point.without(flow, Sentence.of("prediction.why.saturated", gPerS(flow), gPerS(limit)));
    }

    private static Point belowTable(double flow, double limit) {
        return Point.without(flow, Sentence.of("prediction.why.below-table", gPerS(flow), gPerS(limit)));
    }

    /** The two tables of a sensor that differs, where both are recorded and of one kind. */
    static Optional<TransferCurves> of(Seat sensor) {
        Optional<Curve> cal = TRANSFER.in(sensor.reference().attributes());
        return TRANSFER.in(sensor.fitted().attributes())
                .flatMap(inst -> cal.map(known -> new TransferCurves(inst, known)))
                .filter(TransferCurves::areOfOneKind);
    }

    boolean hasRatioAt(double flow) {
        return at(flow).ratio() != null;
    }

    /** Below it nothing is said: where the one table begins, or the flow at which the other would. */
    double lowestFlow() {
        return cal.first() <= inst.first() ? inst.lowest() : inst.at(Math.min(cal.first(), inst.last()));
    }

    /** Above it the sensor is saturated. */
    double highestFlow() {
        return cal.last() >= inst.last() ? inst.highest() : inst.at(Math.max(cal.last(), inst.first()));
    }

    /** The factor of a sensor that differs; empty where it has none, which is then on record. */
    static Optional<Factor> of(Seat sensor, Workings workings) {
        Optional<Curve> inst = TRANSFER.in(sensor.fitted().attributes());
        Optional<Curve> cal = TRANSFER.in(sensor.reference().attributes());
        if (inst.isEmpty()) {
            workings.notRecordedOnTheCar(sensor, TRANSFER.name());
        }
        if (cal.isEmpty()) {
            workings.notRecordedByTheCalibration(sensor, TRANSFER.name());
        }
        if (inst.isEmpty() || cal.isEmpty()) {
            return Optional.empty();
        }
        TransferCurves curves = new TransferCurves(inst.get(), cal.get());
        if (!curves.areOfOneKind()) {
            workings.cannot(sensor.place(), new Sentence("prediction.why.other-signal", List.of()));
            return Optional.empty();
        }
        return curves.factor(sensor, workings);
    }

    private Optional<Factor> factor(Seat sensor, Workings workings) {
        List<Input> flows = workings.flows();
        List<Input> ratios = new ArrayList<>();
        double worst = 1;
        for (Input flow : flows) {
            Point point = at(flow.value());
            if (point.ratio() != null) {
                double ratio =
                        workings.step(Formula.TRANSFER, sensor.place(), point.ratio(), read(flow, point.ratio()));
                ratios.add(Input.computed(named(flow), ratio));
                worst = ratios.size() == 1 || isWorse(ratio, worst) ? ratio : worst;
            } else if (point.why() != null) {
                workings.cannot(sensor.place(), point.why());
            }
        }
        if (ratios.isEmpty()) {
            return Optional.empty();
        }
        workings.step(Formula.TRANSFER_WORST, sensor.place(), worst, ratios.toArray(Input[]::new));
        Point idle = at(flows.get(0).value());
        return Optional.of(new Factor(worst, idle.ratio()));
    }

    /** The flow, the signal that it makes, and what the ECU takes that for. */
    private Input[] read(Input flow, double ratio) {
        return same
                ? new Input[] {flow}
                : new Input[] {
                    flow,
                    Input.computed("signal", inst.inverse(flow.value())),
                    Input.computed("believedGPerS", ratio * flow.value())
                };
    }

    /** {@code idleAirflowGPerS} has the ratio {@code airMeterRatioAtIdle}. */
    private static String named(Input flow) {
        String at = flow.name().replace("AirflowGPerS", "");
        return "airMeterRatioAt" + at.substring(0, 1).toUpperCase(Locale.ROOT) + at.substring(1);
    }

    /** A half is as far from 1 as twice. */
    private static boolean isWorse(double ratio, double than) {
        return Math.abs(Math.log(ratio)) > Math.abs(Math.log(than));
    }
}
