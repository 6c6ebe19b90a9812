package org.bayhold.support;

import java.util.concurrent.atomic.AtomicInteger;

/** Vehicle identification numbers for tests: the regulation's own sample with other serials, and a check digit that holds. */
public final class Vins {
    private static final AtomicInteger SERIALS = new AtomicInteger(200_000);
    // 49 CFR 565.15(c), tables III and IV
    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final String VALUES = "12345678123457923456789";
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

    private Vins() {}

    /** A variant of 1G4AH59H45G118341 that no other test has, with the check digit of 49 CFR 565.15(c). */
    public static String next() {
        return checked("1G4AH59H05G%06d".formatted(SERIALS.incrementAndGet()));
    }

    /** The same with a check digit that does not hold. */
    public static String withWrongCheckDigit() {
        String right = next();
        char wrong = right.charAt(8) == '1' ? '2' : '1';
        return right.substring(0, 8) + wrong + right.substring(9);
    }

    /** A variant of the public test vector WP0ZZZ99ZTS392124: European, where position 9 is no check digit. */
    public static String european() {
        return "WP0ZZZ99ZTS%06d".formatted(SERIALS.incrementAndGet());
    }

    /** {@code vin} with position 9 computed. */
    static String checked(String vin) {
        int sum = 0;
        for (int i = 0; i < 17; i++) {
            sum += WEIGHTS[i] * valueOf(vin.charAt(i));
        }
        int remainder = sum % 11;
        return vin.substring(0, 8) + (remainder == 10 ? "X" : String.valueOf(remainder)) + vin.substring(9);
    }

    private static int valueOf(char c) {
        return Character.isDigit(c) ? c - '0' : VALUES.charAt(LETTERS.indexOf(c)) - '0';
    }
}
