package org.bayhold.race;

import java.util.UUID;

/** Something that must never stand in a record. */
record Violation(Kind kind, UUID chain, String what) {
    enum Kind {
        /** A gap, or a fork. */
        CHAIN_BROKEN,
        /** The head says something else than the last entry: the car can be written to no more. */
        HEAD_ELSEWHERE,
        /** Bytes that do not give the hash, or columns that do not say what the bytes say. */
        ENTRY_BROKEN,
        /** A write that is not later than the one before it. */
        TIME_RUNS_BACKWARDS,
        TWO_ITEMS_OPEN,
        CLEAR_WHILE_AN_ITEM_IS_OPEN,
        /** What was on record before the handover holds the car. */
        CLEAR_AGAINST_THE_RECORD,
        CLEAR_ON_A_WITHDRAWN_REVISION,
        /** A car runs a withdrawn revision, and nobody is told to do anything about it. */
        WITHDRAWN_AND_NOBODY_CALLS
    }

    /** The car left and should not have. */
    boolean opensTheGate() {
        return switch (kind) {
            case CLEAR_WHILE_AN_ITEM_IS_OPEN, CLEAR_AGAINST_THE_RECORD, CLEAR_ON_A_WITHDRAWN_REVISION -> true;
            default -> false;
        };
    }
}
