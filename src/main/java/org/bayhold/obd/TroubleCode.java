package org.bayhold.obd;

import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A trouble code that an ECU reports (SAE J2012).
 *
 * @param code P0171 and the like
 * @param related it speaks of mixture, airflow, boost or combustion, as {@link CodeTopic} had it when it was read
 */
public record TroubleCode(String code, Kind kind, boolean related) {
    /** A code as people write it; P0000 means that there is none. */
    public static final String FORM = "(?![Pp]0000)[PCBUpcbu][0-3][0-9A-Fa-f]{3}";

    /** The second digit says whose meaning a code has: the standard's or its maker's (makers' service manuals). */
    private static final Pattern STANDARD = Pattern.compile("[PCBU]0.*|P2.*|P3[4-9A-F].*");

    /** How an ECU keeps it, and the service that asks for it (SAE J1979). */
    public enum Kind {
        STORED(0x03),
        PENDING(0x07),
        PERMANENT(0x0A);

        private static final List<Kind> ALL = List.of(values());

        private final int service;

        Kind(int service) {
            this.service = service;
        }

        static @Nullable Kind ofService(int service) {
            return ALL.stream()
                    .filter(kind -> kind.service == service)
                    .findFirst()
                    .orElse(null);
        }
    }

    /** @param code in upper case */
    public static TroubleCode of(String code, Kind kind) {
        return new TroubleCode(code, kind, CodeTopic.of(code).isPresent());
    }

    /** Only a code with the standard's meaning can be judged; another means what its maker says. */
    public static boolean isOfTheStandard(String code) {
        return STANDARD.matcher(code).matches();
    }

    /** Two bytes as an ECU sends them: two bits of letter, two of first digit, then three hex digits. */
    static String read(int high, int low) {
        return String.format("%c%d%X%02X", "PCBU".charAt(high >> 6), high >> 4 & 3, high & 0xF, low);
    }
}
