package org.bayhold.prediction;

import org.jspecify.annotations.Nullable;

/**
 * By what a part multiplies a ratio of the chain.
 *
 * @param atIdle null where it is not known, which is not the same as 1
 * @param bandPercent how far an estimate strays; null where it is none
 */
record Factor(
        double atLoad, @Nullable Double atIdle, @Nullable Double bandPercent) {
    static final Factor ONE = everywhere(1);

    Factor(double atLoad, @Nullable Double atIdle) {
        this(atLoad, atIdle, null);
    }

    static Factor everywhere(double ratio) {
        return new Factor(ratio, ratio);
    }

    Factor within(double percent) {
        return new Factor(atLoad, atIdle, percent);
    }

    /** Of two bands the wider holds. */
    Factor times(Factor other) {
        return new Factor(
                atLoad * other.atLoad,
                atIdle == null || other.atIdle == null ? null : atIdle * other.atIdle,
                bandPercent == null || (other.bandPercent != null && other.bandPercent > bandPercent)
                        ? other.bandPercent
                        : bandPercent);
    }

    boolean isFactor(Factor other) {
        return isClose(atLoad, other.atLoad)
                && (atIdle == null ? other.atIdle == null : other.atIdle != null && isClose(atIdle, other.atIdle));
    }

    /** Two places that were computed from the same figures, give or take their rounding. */
    private static boolean isClose(double one, double other) {
        return Math.abs(one - other) <= 1e-9 * Math.abs(one);
    }
}
