package org.bayhold.gate;

/** How bad a mismatch is; four grades of the shop's own. The gate holds at LOW as firmly as at EXTREME. */
public enum Risk {
    LOW,
    MODERATE,
    HIGH,
    EXTREME;

    /** The grade of a prediction. */
    static Risk of(org.bayhold.prediction.Risk predicted) {
        return switch (predicted) {
            case LOW -> LOW;
            case MODERATE -> MODERATE;
            case HIGH -> HIGH;
            case EXTREME -> EXTREME;
        };
    }

    Risk or(Risk other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
