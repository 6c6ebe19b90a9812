package org.bayhold.drivelog;

/** What a drive says of its calibration. {@code docs/drive-log.md, D14}. */
public enum Verdict {
    PASS,
    FAIL,
    INSUFFICIENT
}
