package org.bayhold.audit;

/** What the audit found about a handover. docs/rules.md, rule 13. */
public enum Finding {
    /** A manager released the car on HOLD. */
    EXCEPTION,
    /** What was recorded after the handover says something else about the car at the handover. */
    LATE_RECORD,
    /** The revision that the car ran was withdrawn while the car was out. */
    WITHDRAWN_SINCE,
    /** Part or software was changed while the car was out. */
    CHANGED_AFTER_HANDOFF,
    /** An ECU check at the handover, on the road or at the return shows other software than the record does. */
    READ_BACK_DIFFERS,
    /** A retune item closed before this handover because every cause of it was struck out. */
    VOIDED_CAUSE
}
