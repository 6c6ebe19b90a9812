package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * Something that is wrong with the file and does not keep it from being judged. {@code docs/drive-log.md, D6}.
 *
 * @param parameter null where it is of the rows and not of one parameter
 * @param count how often
 * @param seconds how long, where it lasts: gaps, stuck sensors; else 0
 * @param firstRow the line where it was met first
 */
public record Flaw(Kind kind, @Nullable Parameter parameter, long count, double seconds, long firstRow) {
    /** What may be wrong. */
    public enum Kind {
        GAP,
        REPEATED_TIME,
        BACKWARD_TIME,
        ROW_WITHOUT_TIME,
        ROW_TOO_WIDE,
        ROW_TOO_SHORT,
        NOT_A_NUMBER,
        OUT_OF_RANGE,
        STUCK
    }
}
