package org.bayhold.page;

import java.util.regex.Pattern;

/** Numbers as people write them. What could be two numbers is none. */
final class TypedNumber {
    private static final Pattern WHOLE = Pattern.compile("-?\\d+|-?\\d{1,3}([\\s\u00a0\u202f,.'’]\\d{3})+");
    /** A point or a comma before the fraction; three digits after a comma could be thousands as well. */
    private static final Pattern DECIMAL = Pattern.compile("-?\\d+(\\.\\d+|,\\d{1,2}|,\\d{4,})?");

    private TypedNumber() {}

    /**
     * With a mark between thousands or without: 48300, 48 300, 48,300, 48.300.
     *
     * @throws NumberFormatException where it is none
     */
    static int whole(String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw new NumberFormatException(text);
        }
        return Integer.parseInt(text.replaceAll("[^\\d-]", ""));
    }

    /**
     * 1.5 or 1,5; not 1,500.
     *
     * @throws NumberFormatException where it is none
     */
    static double decimal(String text) {
        if (!DECIMAL.matcher(text).matches()) {
            throw new NumberFormatException(text);
        }
        return Double.parseDouble(text.replace(',', '.'));
    }
}
