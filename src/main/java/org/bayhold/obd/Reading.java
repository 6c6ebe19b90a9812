package org.bayhold.obd;

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

    private boolean hasIds() {
        return calid != null && cvn != null;
    }

    private static boolean eq(@Nullable String a, @Nullable String b) {
        return a != null && a.equals(b);
    }
}
