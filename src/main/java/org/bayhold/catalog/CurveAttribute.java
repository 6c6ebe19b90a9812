package org.bayhold.catalog;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** The transfer curve of a sensor, as a table of {@code [signal, flow]}. */
public record CurveAttribute(String name) implements Attribute {
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
