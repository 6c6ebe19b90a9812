package org.bayhold.catalog;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** The transfer curve of a sensor, as a table of {@code [signal, flow]}. */
public record CurveAttribute(String name) implements Attribute {
    private static final String FLOW = "g/s";
    private static final int AS_RECORDED = Integer.MAX_VALUE;

    public Optional<Curve> in(Map<String, Object> recorded) {
        return curve(recorded.get(name));
    }

    @Override
    public Kind kind() {
        return Kind.CURVE;
    }

    @Override
    public Optional<Refusal.Reason> problem(String field, Object value) {
        return curve(value).isPresent()
                ? Optional.empty()
                : Optional.of(new Refusal.Reason(
                        field,
                        "attributes.curve",
                        List.of(
                                name,
                                Curve.FEWEST_POINTS,
                                Curve.MOST_POINTS,
                                NumberAttribute.plain(Curve.LARGEST_SIGNAL),
                                NumberAttribute.plain(Curve.LARGEST_FLOW_G_PER_S),
                                NumberAttribute.plain(Curve.SMALLEST_STEP))));
    }

    @Override
    public String allowed() {
        return Curve.FEWEST_POINTS + " … " + Curve.MOST_POINTS + " × [V | Hz, g/s]";
    }

    /** Signal and flow, point by point; the signal is in volts or hertz, which the table does not say. */
    @Override
    public String show(Object value, Units units) {
        return curve(value).map(curve -> show(curve, units)).orElseGet(() -> String.valueOf(value));
    }

    private static String show(Curve curve, Units units) {
        StringJoiner points = new StringJoiner(", ", "", " " + units.symbol(FLOW));
        for (int i = 0; i < curve.points(); i++) {
            points.add(Units.plain(curve.signal(i), AS_RECORDED) + " → "
                    + units.number(curve.flowGPerS(i), FLOW, AS_RECORDED));
        }
        return points.toString();
    }

    private static Optional<Curve> curve(@Nullable Object value) {
        if (!(value instanceof List<?> rows)) {
            return Optional.empty();
        }
        double[] signals = new double[rows.size()];
        double[] flows = new double[rows.size()];
        for (int i = 0; i < signals.length; i++) {
            if (!(rows.get(i) instanceof List<?> row)
                    || row.size() != 2
                    || !(row.get(0) instanceof Number signal)
                    || !(row.get(1) instanceof Number flow)) {
                return Optional.empty();
            }
            signals[i] = signal.doubleValue();
            flows[i] = flow.doubleValue();
        }
        return Curve.of(signals, flows);
    }
}
