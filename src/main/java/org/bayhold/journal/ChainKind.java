package org.bayhold.journal;

/** What a chain is the record of. */
public enum ChainKind {
    SHOP,
    IDENTITY,
    VEHICLE,
    PART_SPEC,
    CALIBRATION,
    ADVICE
}
