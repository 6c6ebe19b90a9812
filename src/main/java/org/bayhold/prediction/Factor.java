package org.bayhold.prediction;

import org.jspecify.annotations.Nullable;

/**
 * By what a part multiplies a ratio of the chain.
 *
 * @param atIdle null where it is not known, which is not the same as 1
 */
record Factor(double atLoad, @Nullable Double atIdle) {
    static final Factor ONE = new Factor(1, 1.0);

    static Factor everywhere(double ratio) {
        return new Factor(ratio, ratio);
    }

    Factor times(Factor other) {
        return new Factor(atLoad * other.atLoad, atIdle == null || other.atIdle == null ? null : atIdle * other.atIdle);
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
