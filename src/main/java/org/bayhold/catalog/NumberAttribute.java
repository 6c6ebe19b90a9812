package org.bayhold.catalog;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;

/**
 * A figure.
 *
 * @param unit for people; empty where the figure is a ratio
 * @param least the smallest value that is not absurd, itself allowed
 * @param most the largest value that is not absurd, itself allowed
 */
public record NumberAttribute(String name, String unit, double least, double most) implements Attribute {
    /** The value among what is recorded. One that would be refused today counts as not recorded. */
    public OptionalDouble in(Map<String, Object> recorded) {
        return recorded.get(name) instanceof Number number && takes(number)
                ? OptionalDouble.of(number.doubleValue())
                : OptionalDouble.empty();
    }

    @Override
    public Kind kind() {
        return Kind.NUMBER;
    }

    @Override
    public Optional<Refusal.Reason> problem(String field, Object value) {
        return value instanceof Number number && takes(number)
                ? Optional.empty()
                : Optional.of(
                        new Refusal.Reason(field, "attributes.range", List.of(name, withUnit(least), withUnit(most))));
    }

    @Override
    public String allowed() {
        return withUnit(least) + " … " + withUnit(most);
    }

    @Override
    public String show(Object value, Units units) {
        return value instanceof Number number && takes(number)
                ? units.show(number.doubleValue(), unit)
                : String.valueOf(value);
    }

    /** Comparisons with NaN are false, so that it is refused as well. */
    private boolean takes(Number number) {
        return number.doubleValue() >= least && number.doubleValue() <= most;
    }

    private String withUnit(double bound) {
        return unit.isEmpty() ? plain(bound) : plain(bound) + " " + unit;
    }

    /** Without an exponent, and without a language's grouping. */
    static String plain(double figure) {
        return BigDecimal.valueOf(figure).stripTrailingZeros().toPlainString();
    }
}
