package org.bayhold.vehicle;

/** What was known of a car when it was registered. It holds from the beginning of time. */
public enum Baseline {
    /** Factory parts and factory calibration. */
    FACTORY,
    /** Every place and the calibration are unknown. */
    UNKNOWN
}
