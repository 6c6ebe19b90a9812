package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;

/**
 * Why a car needs a retune.
 *
 * @param recordId the record it comes from: a fact of the car, a withdrawal or a correction
 * @param effectiveAt from when it holds
 */
public record Cause(Code code, UUID recordId, Instant effectiveAt) {
    /** docs/rules.md, rules 1, 2, 7 and 10. */
    public enum Code {
        PART_CHANGED,
        FLASH_FAILED,
        FLASH_DOES_NOT_COVER,
        FLASH_NOT_OURS,
        TRANSFER_FLASHED,
        READ_BACK_DIFFERS,
        REVISION_WITHDRAWN,
        LATE_RECORD,
        PART_SPEC_CORRECTED,
        INSPECTION_CONTRADICTS,
        UNKNOWN_BASELINE,
        EVIDENCE_VOIDED,
        VOIDING_LEFT_UNMATCHED,
        CATEGORY_MOVED
    }
}
