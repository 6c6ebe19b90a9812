package org.bayhold.calibration;

/** What a revision is for. */
public enum Purpose {
    NORMAL,
    /** May leave, with its limits and a promised retune on the certificate. */
    RUN_IN,
    /** To reach the dynamometer: never leaves. */
    TRANSFER
}
