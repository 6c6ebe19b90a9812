package org.bayhold.gate;

/** What a check answers. */
public enum Outcome {
    PASS,
    FAIL,
    NOT_REQUIRED
}
