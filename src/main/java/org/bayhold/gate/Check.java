package org.bayhold.gate;

/** What the gate asks of a car, in the order of docs/rules.md, "Gate checks"; and what a sign-off asks beyond it. */
public enum Check {
    PARTS_KNOWN,
    FLASH_COMPLETED,
    FLASH_AFTER_LAST_CHANGE,
    CALIBRATION_IN_FORCE,
    PARTS_COVERED,
    READ_BACK_MATCHES,
    NO_RELATED_TROUBLE_CODES,
    DRIVE_LOG_PASSED,
    RETUNE_CLEARED,
    CUSTOMER_ACKNOWLEDGED,
    /** Of a sign-off only: whoever signs is not the one who flashed. */
    SECOND_PERSON_SIGNED
}
