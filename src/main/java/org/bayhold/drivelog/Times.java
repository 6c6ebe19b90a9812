package org.bayhold.drivelog;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Times of rows, in seconds: a number, or a time of day with or without a date before it. Only differences count, so the
 * date is not read; a clock that passes midnight goes on. {@code docs/drive-log.md, D5}.
 */
final class Times {
    private static final double DAY = 86_400;
    private static final int LONGEST = 40;
    private static final double MIDNIGHT = 1;
    private static final double NOON = 2;
    private static final Pattern SECONDS = Pattern.compile("\\d{1,2}([.,]\\d{0,12})?");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,4}");
    private static final Pattern ZONE = Pattern.compile("Z|UTC|[+-]\\d\\d:?\\d?\\d?");

    private final Numbers numbers;
    private final double factor;
    private double days;
    private double lastClock = Double.NaN;

    /** @param factor by which a plain number becomes seconds */
    Times(Numbers numbers, double factor) {
        this.numbers = numbers;
        this.factor = factor;
    }

    /** Seconds, {@link Numbers#BLANK} or {@link Numbers#NONE}. */
    double parse(char[] buffer, int offset, int length) {
        double number = numbers.parse(buffer, offset, length);
        if (number != Numbers.NONE) {
            return number * factor;
        }
        double clock = length > LONGEST ? Numbers.NONE : clock(new String(buffer, offset, length).strip());
        if (clock == Numbers.NONE) {
            return clock;
        }
        if (lastClock - clock > DAY / 2) {
            days++;
        }
        lastClock = clock;
        return clock + days * DAY;
    }

    /** {@code 17:04:09.250}, {@code 5:04:09 PM}, {@code 04:09.25}, {@code 2026-11-25T17:04:09,25Z}, {@code 25.11.2026 17:04:09}. */
    private double clock(String text) {
        int colon = text.indexOf(':');
        if (colon < 1) {
            return Numbers.NONE;
        }
        int from = colon;
        while (from > 0 && isDigit(text.charAt(from - 1))) {
            from--;
        }
        int to = colon;
        while (to < text.length() && isPartOfAClock(text.charAt(to))) {
            to++;
        }
        double hours = halfOfTheDay(text.substring(to));
        if (hours < 0 || (from > 0 && !isAfterADate(text, from))) {
            return Numbers.NONE;
        }
        String[] parts = text.substring(from, to).split(":", -1);
        if (parts.length > 3) {
            return Numbers.NONE;
        }
        double seconds = 0;
        for (int i = 0; i < parts.length; i++) {
            boolean last = i == parts.length - 1;
            double part = part(parts[i], last);
            if (part < 0 || (i > 0 && part >= 60)) {
                return Numbers.NONE;
            }
            seconds = seconds * 60 + part;
        }
        if (hours == NOON || hours == MIDNIGHT) {
            seconds = seconds % (DAY / 2) + (hours == NOON ? DAY / 2 : 0);
        }
        return seconds;
    }

    /** What stands behind a clock: nothing, a half of the day, a zone; negative where it is none of these. */
    private static double halfOfTheDay(String rest) {
        String plain = rest.strip().toUpperCase(Locale.ROOT).replace(".", "");
        if (plain.equals("AM")) {
            return MIDNIGHT;
        }
        if (plain.equals("PM")) {
            return NOON;
        }
        return plain.isEmpty() || ZONE.matcher(plain).matches() ? 0 : -1;
    }

    private static boolean isAfterADate(String text, int at) {
        char before = text.charAt(at - 1);
        return before == 'T' || before == ' ' || before == '_';
    }

    private static boolean isPartOfAClock(char c) {
        return isDigit(c) || c == ':' || c == '.' || c == ',';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** A whole number, the last one with decimals behind a point or a comma; negative where it is none. */
    private static double part(String text, boolean last) {
        return (last ? SECONDS : WHOLE).matcher(text).matches() ? Double.parseDouble(text.replace(',', '.')) : -1;
    }
}
