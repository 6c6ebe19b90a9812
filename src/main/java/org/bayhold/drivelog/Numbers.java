package org.bayhold.drivelog;

/**
 * Numbers as loggers write them, read from a piece of a buffer without making a text of it. {@code docs/drive-log.md, D2}.
 */
final class Numbers {
    /** What a field without anything in it gives. */
    static final double BLANK = Double.NaN;
    /** What a field gives that holds something, and no number. */
    static final double NONE = Double.NEGATIVE_INFINITY;

    /** So many digits fit a long; beyond, the slow way. */
    private static final int DIGITS = 18;
    /** Powers of ten that a double holds exactly, so that one division rounds once. */
    private static final double[] TENS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18
    };

    private static final long EXACT = 1L << 53;

    private static final int LONGEST = 64;

    private final char decimal;
    private final char grouping;

    /** @param decimal a point or a comma; the other one groups thousands */
    Numbers(char decimal) {
        this.decimal = decimal;
        this.grouping = decimal == '.' ? ',' : '.';
    }

    char decimal() {
        return decimal;
    }

    double parse(String text) {
        return parse(text.toCharArray(), 0, text.length());
    }

    /** A finite number, {@link #BLANK} or {@link #NONE}. */
    double parse(char[] buffer, int offset, int length) {
        if (length == 0 || length > DIGITS) {
            return slow(buffer, offset, length);
        }
        int end = offset + length;
        boolean negative = buffer[offset] == '-';
        int from = negative ? offset + 1 : offset;
        long digits = 0;
        int at = from;
        for (; at < end; at++) {
            int digit = buffer[at] - '0';
            if ((char) digit > 9) {
                break;
            }
            digits = digits * 10 + digit;
        }
        if (at == end) {
            return at == from ? slow(buffer, offset, length) : negative ? -digits : digits;
        }
        int point = at;
        for (at = point + 1; at < end; at++) {
            int digit = buffer[at] - '0';
            if ((char) digit > 9) {
                break;
            }
            digits = digits * 10 + digit;
        }
        int decimals = end - point - 1;
        if (at < end || decimals == 0 || buffer[point] != decimal || digits > EXACT) {
            return slow(buffer, offset, length);
        }
        double value = digits / TENS[decimals];
        return negative ? -value : value;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Blanks around it, signs, exponents, thousands, a percent sign. */
    private double slow(char[] buffer, int offset, int length) {
        int from = offset;
        int to = offset + length;
        while (from < to && isBlank(buffer[from])) {
            from++;
        }
        while (to > from && isBlank(buffer[to - 1])) {
            to--;
        }
        if (from == to) {
            return BLANK;
        }
        if (to - from > 1 && buffer[to - 1] == '%') {
            to--;
            while (to > from && isBlank(buffer[to - 1])) {
                to--;
            }
        }
        return to - from > LONGEST ? NONE : spelled(buffer, from, to);
    }

    private double spelled(char[] buffer, int from, int to) {
        StringBuilder plain = new StringBuilder(to - from);
        int at = from;
        if (buffer[at] == '+' || buffer[at] == '-' || buffer[at] == '\u2212') {
            plain.append(buffer[at] == '+' ? '+' : '-');
            at++;
        }
        int sign = plain.length();
        int mantissa = at;
        while (at < to && (isDigit(buffer[at]) || isGrouping(buffer, mantissa, at, to))) {
            if (isDigit(buffer[at])) {
                plain.append(buffer[at]);
            }
            at++;
        }
        if (at < to && buffer[at] == decimal) {
            plain.append(plain.length() == sign ? "0." : ".");
            int before = at;
            at = digits(buffer, at + 1, to, plain);
            if (at == before + 1 && before == mantissa) {
                return NONE;
            }
        }
        if (at == mantissa) {
            return NONE;
        }
        if (at < to && (buffer[at] == 'e' || buffer[at] == 'E')) {
            plain.append('e');
            at++;
            if (at < to && (buffer[at] == '+' || buffer[at] == '-')) {
                plain.append(buffer[at]);
                at++;
            }
            int before = at;
            at = digits(buffer, at, to, plain);
            if (at == before) {
                return NONE;
            }
        }
        if (at < to) {
            return NONE;
        }
        double value = Double.parseDouble(plain.toString());
        return Double.isFinite(value) ? value : NONE;
    }

    private static int digits(char[] buffer, int from, int to, StringBuilder plain) {
        int at = from;
        while (at < to && isDigit(buffer[at])) {
            plain.append(buffer[at]);
            at++;
        }
        return at;
    }

    /** The other mark, a blank or an apostrophe between digits, with exactly three digits behind it. */
    private boolean isGrouping(char[] buffer, int from, int at, int to) {
        boolean mark = buffer[at] == grouping || isBlank(buffer[at]) || buffer[at] == '\'' || buffer[at] == '\u2019';
        boolean isLater = at - from > 3;
        if (!mark || at == from || (isLater && !isGrouping(buffer, from, at - 4, to))) {
            return false;
        }
        for (int i = 1; i <= 3; i++) {
            if (at + i >= to || !isDigit(buffer[at + i])) {
                return false;
            }
        }
        return at + 4 >= to || !isDigit(buffer[at + 4]);
    }

    static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\u00a0' || c == '\u202f' || c == '\u2009';
    }
}
