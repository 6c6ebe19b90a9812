package org.bayhold.drivelog;

import java.util.Locale;

/** PID 03 of SAE J1979 as loggers write it: the words, their abbreviations, or the bits. {@code docs/drive-log.md, D4}. */
final class FuelStatus {
    private static final double CLOSED = 1;
    private static final double OPEN = 0;
    private static final int LONGEST = 80;
    /** Closed loop; closed loop with a fault in one of its sensors (from memory). */
    private static final int CLOSED_BITS = 0x02 | 0x10;

    private FuelStatus() {}

    /** 1 in closed loop, 0 in open loop, {@link Numbers#BLANK} or {@link Numbers#NONE}. */
    static double parse(char[] buffer, int offset, int length) {
        if (length == 1 && buffer[offset] >= '0' && buffer[offset] <= '9') {
            return ofBits(buffer[offset] - '0');
        }
        if (length > LONGEST) {
            return Numbers.NONE;
        }
        String text = new String(buffer, offset, length).strip().toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            return Numbers.BLANK;
        }
        if (text.startsWith("cl")) {
            return CLOSED;
        }
        if (text.startsWith("ol") || text.startsWith("open")) {
            return OPEN;
        }
        return text.matches("\\d{1,3}([.,]0+)?") ? ofBits(Integer.parseInt(text.split("[.,]", 2)[0])) : Numbers.NONE;
    }

    private static double ofBits(int bits) {
        return (bits & CLOSED_BITS) != 0 ? CLOSED : OPEN;
    }
}
