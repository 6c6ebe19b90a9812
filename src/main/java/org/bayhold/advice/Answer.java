package org.bayhold.advice;

/** What somebody is told who asks whether a part may run with a calibration. docs/rules.md, "Advice". */
enum Answer {
    /** The calibration was not written for it. */
    RETUNE_FIRST,
    /** The calibration was written for exactly what would be on the car. */
    COVERED,
    /** Nobody knows what would be on the car, so nobody can say. */
    UNKNOWN_PARTS
}
