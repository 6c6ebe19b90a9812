package org.bayhold.catalog;

import java.util.List;
import java.util.Map;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** What the attributes of a part spec may look like: scalars, and tables of numbers. */
final class Attributes {
    private static final int MOST = 60;
    private static final int LONGEST_NAME = 60;
    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_TABLE = 1000;

    private Attributes() {}

    static void validate(Map<String, Object> attributes) {
        if (attributes.size() > MOST) {
            throw Refusal.invalid("attributes", "attributes.too-many", MOST);
        }
        attributes.forEach((name, value) -> {
            if (name.isBlank() || name.length() > LONGEST_NAME) {
                throw Refusal.invalid("attributes", "attributes.name", LONGEST_NAME);
            }
            if (!isScalar(value) && !isTable(value)) {
                throw Refusal.invalid("attributes." + name, "attributes.value", name);
            }
        });
    }

    private static boolean isScalar(@Nullable Object value) {
        return value instanceof Boolean
                || isNumber(value)
                || (value instanceof String text && text.length() <= LONGEST_TEXT);
    }

    private static boolean isNumber(@Nullable Object value) {
        return value instanceof Number number && Double.isFinite(number.doubleValue());
    }

    private static boolean isTable(@Nullable Object value) {
        return value instanceof List<?> rows
                && rows.size() <= LONGEST_TABLE
                && rows.stream()
                        .allMatch(row -> isNumber(row)
                                || (row instanceof List<?> cells
                                        && cells.stream().allMatch(Attributes::isNumber)));
    }
}
