package org.bayhold.vehicle;

import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A vehicle identification number: 17 characters in upper case (ISO 3779; 49 CFR 565.13). One that exists has the right
 * form, and the right check character wherever the law demands one; {@link #parse} is the way in for what people type.
 */
public record Vin(String value) {
    private static final int LENGTH = 17;

    /**
     * First characters where position 9 must compute: North America (USA: 49 CFR 565; Canada: CMVSS 115, from memory;
     * Mexico with them) and China (GB 16735, from memory).
     */
    private static final String CHECKED_REGIONS = "12345L";

    /** 49 CFR 565.15(d), Table VII: 30 codes, then they start over. */
    private static final String YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789";

    /** @throws IllegalArgumentException for anything {@link #parse} would refuse, or that is not yet in upper case */
    public Vin {
        Reason reason = refusal(value);
        if (reason != null) {
            throw new IllegalArgumentException("no VIN: " + reason);
        }
    }

    /** What became of a typed VIN. */
    public sealed interface Parsed permits Valid, Invalid {}

    /** It is a VIN; the warnings are worth a second look at the plate, and refuse nothing. */
    public record Valid(Vin vin, List<Warning> warnings) implements Parsed {
        public Valid {
            warnings = List.copyOf(warnings);
        }
    }

    /** It is none. */
    public record Invalid(Reason reason) implements Parsed {}

    /** What is odd about a VIN that stands. */
    public enum Warning {
        /** Position 9 looks like a check character and does not compute, where its maker need not put one. */
        CHECK_CHARACTER_DOES_NOT_COMPUTE,
        /** Position 9 holds no check character at all, so that nothing guards against a typing error. */
        NO_CHECK_CHARACTER
    }

    /** Why something is no VIN. */
    public enum Reason {
        /** Not 17 characters. */
        LENGTH,
        /** A character other than 0-9 and A-Z without I, O and Q. */
        CHARACTER,
        /** Position 9 does not compute where it must. */
        CHECK_CHARACTER
    }

    /** Reads what was typed or scanned: blanks around it and lower case are forgiven, nothing else is. */
    public static Parsed parse(String typed) {
        String value = upperCase(typed.strip());
        Reason reason = refusal(value);
        if (reason != null) {
            return new Invalid(reason);
        }
        if (CheckCharacter.computes(value)) {
            return new Valid(new Vin(value), List.of());
        }
        // outside the checked regions the maker may put anything there, often Z
        boolean couldBeOne = couldBeCheckCharacter(value.charAt(CheckCharacter.INDEX));
        return new Valid(
                new Vin(value),
                List.of(couldBeOne ? Warning.CHECK_CHARACTER_DOES_NOT_COMPUTE : Warning.NO_CHECK_CHARACTER));
    }

    /**
     * The model years that position 10 can mean (Table VII), the earlier first; none where it holds no year code, which
     * outside North America it need not.
     */
    public List<Integer> possibleModelYears() {
        int code = YEAR_CODES.indexOf(value.charAt(9));
        return code < 0 ? List.of() : List.of(1980 + code, 2010 + code);
    }

    /**
     * The model year of a passenger car, or of a multipurpose vehicle or truck up to 4536 kg (10,000 lb) GVWR: there a
     * digit in position 7 means 1980 to 2009 and a letter 2010 to 2039 (note to Table VII). For any other vehicle the
     * answer would be wrong; ask {@link #possibleModelYears()}.
     */
    public OptionalInt modelYearOfLightVehicle() {
        List<Integer> years = possibleModelYears();
        if (years.isEmpty()) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(years.get(isDigit(value.charAt(6)) ? 0 : 1));
    }

    @Override
    public String toString() {
        return value;
    }

    private static @Nullable Reason refusal(String value) {
        if (value.length() != LENGTH) {
            return Reason.LENGTH;
        }
        if (!value.chars().allMatch(c -> CheckCharacter.ALPHABET.indexOf(c) >= 0)) {
            return Reason.CHARACTER;
        }
        boolean checked = CHECKED_REGIONS.indexOf(value.charAt(0)) >= 0;
        return checked && !CheckCharacter.computes(value) ? Reason.CHECK_CHARACTER : null;
    }

    /** ASCII only: String.toUpperCase would turn a long s into S and sharp s into two letters. */
    private static String upperCase(String text) {
        StringBuilder upper = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            upper.append(c >= 'a' && c <= 'z' ? (char) (c - 'a' + 'A') : c);
        }
        return upper.toString();
    }

    private static boolean couldBeCheckCharacter(char c) {
        return isDigit(c) || c == 'X';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
