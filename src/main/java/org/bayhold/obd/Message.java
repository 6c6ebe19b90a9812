package org.bayhold.obd;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Some bytes from one ECU, at least one, and the line they begin at: first a whole line, later what frames carried. */
final class Message {
    private final int line;
    private final @Nullable String id;
    private final byte[] bytes;

    Message(int line, @Nullable String id, byte[] bytes) {
        this.line = line;
        this.id = id;
        this.bytes = bytes;
    }

    int line() {
        return line;
    }

    /** The id of the ECU in upper-case hex, or null where the text gives none. */
    @Nullable String id() {
        return id;
    }

    int size() {
        return bytes.length;
    }

    int at(int index) {
        return bytes[index] & 0xFF;
    }

    /** True when the bytes from this index on are these. */
    boolean has(int index, int... expected) {
        if (size() < index + expected.length) {
            return false;
        }
        for (int i = 0; i < expected.length; i++) {
            if (at(index + i) != expected[i]) {
                return false;
            }
        }
        return true;
    }

    byte[] slice(int from, int to) {
        return Arrays.copyOfRange(bytes, from, to);
    }
}
