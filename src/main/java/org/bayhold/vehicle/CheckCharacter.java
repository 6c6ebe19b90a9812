package org.bayhold.vehicle;

/** The check character in position 9 of a VIN: 49 CFR 565.15(c), Tables III to V. */
final class CheckCharacter {
    static final int INDEX = 8;

    /** Every character a VIN may hold: no I, O or Q (49 CFR 565.13(g)). */
    static final String ALPHABET = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

    /** Table III, one value under each character of {@link #ALPHABET}; S starts at 2, not at 1. */
    private static final String VALUES = "0123456789" + "12345678" + "1234579" + "23456789";

    /** Table IV, positions 1 to 17. Position 9 weighs nothing: it is what the others check. */
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

    private CheckCharacter() {}

    /** The character that belongs in position 9 of these 17 characters of the alphabet. */
    static char of(String vin) {
        int remainder = weightedSum(vin) % 11;
        return remainder == 10 ? 'X' : (char) ('0' + remainder);
    }

    static boolean computes(String vin) {
        return vin.charAt(INDEX) == of(vin);
    }

    static int weightedSum(String vin) {
        int sum = 0;
        for (int i = 0; i < WEIGHTS.length; i++) {
            sum += product(vin, i);
        }
        return sum;
    }

    static int product(String vin, int index) {
        return (VALUES.charAt(ALPHABET.indexOf(vin.charAt(index))) - '0') * WEIGHTS[index];
    }
}
