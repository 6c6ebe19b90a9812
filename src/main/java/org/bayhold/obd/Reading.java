package org.bayhold.obd;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What identifies the software in an ECU: CALID and CVN as the ECU reports them (SAE J1979 service 09), or the SHA-256
 * of the file that was read out, in lower-case hex.
 */
public record Reading(
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256) {
    public static final Reading NOTHING = new Reading(null, null, null);

    /** True when both name the same software by at least one way of identifying it and differ in none that both have. */
    public boolean shows(Reading other) {
        return comparable(other) && !differsFrom(other);
    }

    /** True when some way of identifying software is present in both and its values differ. */
    public boolean differsFrom(Reading other) {
        return (hasIds() && other.hasIds() && !(eq(calid, other.calid) && eq(cvn, other.cvn)))
                || (fileSha256 != null && other.fileSha256 != null && !fileSha256.equals(other.fileSha256));
    }

    /** True when the two can be compared at all. */
    public boolean comparable(Reading other) {
        return (hasIds() && other.hasIds()) || (fileSha256 != null && other.fileSha256 != null);
    }

    /**
     * What is odd about it and no reason to refuse it: by SAE J1979, service 09, a CALID has up to 16 characters and a CVN
     * is 4 bytes; several are written with commas between them.
     */
    public List<String> oddities() {
        List<String> odd = new ArrayList<>();
        if (calid != null && !calid.matches("[^,]{1,16}(,[^,]{1,16})*")) {
            odd.add("CALID_LONGER_THAN_16");
        }
        if (cvn != null && !cvn.matches("[0-9A-F]{8}(,[0-9A-F]{8})*")) {
            odd.add("CVN_NOT_8_HEX_DIGITS");
        }
        return odd;
    }

    private boolean hasIds() {
        return calid != null && cvn != null;
    }

    private static boolean eq(@Nullable String a, @Nullable String b) {
        return a != null && a.equals(b);
    }
}
