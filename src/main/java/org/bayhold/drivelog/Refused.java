package org.bayhold.drivelog;

/** Why a file is not judged at all. Its sentence is {@code drivelog.refused.*} in the bundle. {@code docs/drive-log.md, D1}. */
public enum Refused {
    EMPTY,
    OVER_THE_LIMIT,
    COMPRESSED,
    NOT_A_TABLE,
    ROWS_DO_NOT_FIT_THE_HEADER,
    NO_RECOGNISED_PARAMETER,
    NO_TIME,
    LINE_TOO_LONG,
    BROKEN_QUOTES,
    NO_ROWS
}
