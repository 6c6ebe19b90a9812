package org.bayhold.obd;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The service 09 items this reader knows, with the bytes each takes (SAE J1979). */
enum InfoType {
    VIN(0x02, 17, 5),
    CALID(0x04, 16, 4),
    CVN(0x06, 4, 1),
    /** Read only to get past it, to what follows in the same reply (length from memory). */
    ECU_NAME(0x0A, 20, 5);

    private static final List<InfoType> ALL = List.of(values());

    private final int code;
    private final int bytes;
    private final int legacyMessages;

    InfoType(int code, int bytes, int legacyMessages) {
        this.code = code;
        this.bytes = bytes;
        this.legacyMessages = legacyMessages;
    }

    static @Nullable InfoType of(int code) {
        for (InfoType type : ALL) {
            if (type.code == code) {
                return type;
            }
        }
        return null;
    }

    int bytes() {
        return bytes;
    }

    /** How many messages of 4 bytes one item takes on the buses before CAN. */
    int legacyMessages() {
        return legacyMessages;
    }
}
