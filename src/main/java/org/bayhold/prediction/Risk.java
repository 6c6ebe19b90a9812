package org.bayhold.prediction;

/** How bad a mismatch is; four grades of the shop's own. {@code docs/prediction.md, P17}. */
public enum Risk {
    LOW,
    MODERATE,
    HIGH,
    EXTREME;

    Risk or(Risk other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
