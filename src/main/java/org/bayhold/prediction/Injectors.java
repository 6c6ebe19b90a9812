package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.DEAD_TIME_MS;
import static org.bayhold.catalog.PartAttributes.FLOW_CC_PER_MIN;
import static org.bayhold.catalog.PartAttributes.RATED_PRESSURE_KPA;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Injectors of another flow or dead time. {@code docs/prediction.md, P10 and P12}. */
final class Injectors {
    /** A pulse that is hardly longer than the dead time delivers what nobody can say. */
    private static final double SHORTEST_OPENING_MS = 0.001;

    private Injectors() {}

    /**
     * Flow, fully open, at any pressure.
     *
     * @param flowCcPerMin at the rated pressure
     */
    static double flowAt(double flowCcPerMin, double ratedPressureKpa, double pressureKpa) {
        return flowCcPerMin * Math.sqrt(pressureKpa / ratedPressureKpa);
    }

    /** What the dead times make of a pulse; empty where either is no shorter than the pulse. */
    static OptionalDouble deadTimeRatio(double pulseMs, double deadInstMs, double deadCalMs) {
        double open = pulseMs - deadInstMs;
        double believed = pulseMs - deadCalMs;
        return open < SHORTEST_OPENING_MS || believed < SHORTEST_OPENING_MS
                ? OptionalDouble.empty()
                : OptionalDouble.of(open / believed);
    }

    /** The factor of injectors that differ, at equal pressure; empty where it cannot be said, which is then on record. */
    static Optional<Factor> of(Seat injectors, Workings workings) {
        OptionalDouble flowInst = workings.fitted(injectors, FLOW_CC_PER_MIN);
        OptionalDouble ratedInst = workings.fitted(injectors, RATED_PRESSURE_KPA);
        OptionalDouble flowCal = workings.calibrated(injectors, FLOW_CC_PER_MIN);
        OptionalDouble ratedCal = workings.calibrated(injectors, RATED_PRESSURE_KPA);
        if (flowInst.isEmpty() || ratedInst.isEmpty() || flowCal.isEmpty() || ratedCal.isEmpty()) {
            return Optional.empty();
        }
        double flow = workings.step(
                Formula.INJECTOR_FLOW,
                injectors.place(),
                flowAt(flowInst.getAsDouble(), ratedInst.getAsDouble(), 1)
                        / flowAt(flowCal.getAsDouble(), ratedCal.getAsDouble(), 1),
                Input.fitted(FLOW_CC_PER_MIN.name(), flowInst.getAsDouble()),
                Input.fitted(RATED_PRESSURE_KPA.name(), ratedInst.getAsDouble()),
                Input.calibrated(FLOW_CC_PER_MIN.name(), flowCal.getAsDouble()),
                Input.calibrated(RATED_PRESSURE_KPA.name(), ratedCal.getAsDouble()));
        return Optional.of(new Factor(flow, atIdle(injectors, workings, flow)));
    }

    /** Dead times count only where both are recorded; where they are not, the ratio at idle is not known. */
    private static @Nullable Double atIdle(Seat injectors, Workings workings, double flow) {
        OptionalDouble inst = DEAD_TIME_MS.in(injectors.fitted().attributes());
        OptionalDouble cal = DEAD_TIME_MS.in(injectors.reference().attributes());
        if (inst.isEmpty() || cal.isEmpty()) {
            return null;
        }
        Input pulse = workings.assumes.idlePulse();
        OptionalDouble ratio = deadTimeRatio(pulse.value(), inst.getAsDouble(), cal.getAsDouble());
        if (ratio.isEmpty()) {
            workings.cannot(injectors.place(), new Sentence("prediction.why.pulse", List.of()));
            return null;
        }
        double deadTime = workings.step(
                Formula.DEAD_TIME,
                injectors.place(),
                ratio.getAsDouble(),
                pulse,
                Input.fitted(DEAD_TIME_MS.name(), inst.getAsDouble()),
                Input.calibrated(DEAD_TIME_MS.name(), cal.getAsDouble()));
        return workings.step(
                Formula.INJECTORS_AT_IDLE,
                injectors.place(),
                flow * deadTime,
                Input.computed("flowRatio", flow),
                Input.computed("deadTimeRatio", deadTime));
    }
}
