package org.bayhold.obd;

import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads one line: an optional CAN id, then bytes in hex, with or without blanks between them. */
final class HexLine {
    private static final Pattern BLANKS = Pattern.compile("[ \t]+");

    /** Ids of 11 bit (ISO 15765-4; ranges from memory): requests to all and to one, and the replies. */
    private static final Pattern REQUEST_11 = Pattern.compile("7DF|7E[0-7]");

    private static final Pattern REPLY_11 = Pattern.compile("7E[89A-F]");

    /** The same of 29 bit. No service 09 message can begin with these bytes, so they need no blank behind them. */
    private static final Pattern REQUEST_29 = Pattern.compile("(18DB33F1|18DA.{2}F1).*");

    private static final Pattern REPLY_29 = Pattern.compile("18DAF1.{2}.*");

    private HexLine() {}

    /** What the line holds; null for a blank line and for the tester's own requests and flow control. */
    static @Nullable Message read(int number, String text) throws UndecodableException {
        String stripped = text.strip();
        if (stripped.isEmpty()) {
            return null;
        }
        String digits = digits(number, stripped);
        int idLength = idLength(digits);
        if (idLength < 0) {
            throw new UndecodableException(Flaw.NOT_HEX, number);
        }
        String id = digits.substring(0, idLength);
        if (REQUEST_11.matcher(id).matches() || REQUEST_29.matcher(id).matches()) {
            return null;
        }
        if (digits.length() == idLength) {
            throw new UndecodableException(Flaw.NOT_HEX, number);
        }
        byte[] bytes = HexFormat.of().parseHex(digits.substring(idLength));
        return new Message(number, id.isEmpty() ? null : id, bytes);
    }

    /** All digits in upper case. Only the first word may have an odd count: it then begins with an id of 11 bit. */
    private static String digits(int number, String stripped) throws UndecodableException {
        if (!stripped.chars().allMatch(c -> HexFormat.isHexDigit(c) || c == ' ' || c == '\t')) {
            throw new UndecodableException(Flaw.NOT_HEX, number);
        }
        String[] words = BLANKS.split(stripped, -1);
        for (int i = 1; i < words.length; i++) {
            if (words[i].length() % 2 != 0) {
                throw new UndecodableException(Flaw.NOT_HEX, number);
            }
        }
        return String.join("", words).toUpperCase(Locale.ROOT);
    }

    /** 0, 3 or 8 digits; negative when an odd count of digits does not begin with an id. */
    private static int idLength(String digits) {
        if (digits.length() % 2 != 0) {
            String id = digits.substring(0, Math.min(3, digits.length()));
            return REQUEST_11.matcher(id).matches() || REPLY_11.matcher(id).matches() ? 3 : -1;
        }
        return REQUEST_29.matcher(digits).matches() || REPLY_29.matcher(digits).matches() ? 8 : 0;
    }
}
