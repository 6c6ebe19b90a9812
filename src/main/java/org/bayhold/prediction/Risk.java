package org.bayhold.prediction;

/**
 * How bad a mismatch is; four grades of the shop's own. The gate holds at LOW as firmly as at EXTREME. {@code docs/prediction.md,
 * P17}.
 */
public enum Risk {
    LOW,
    MODERATE,
    HIGH,
    EXTREME;

    /** The worse of the two. */
    public Risk or(Risk other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
