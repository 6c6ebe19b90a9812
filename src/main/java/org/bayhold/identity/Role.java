package org.bayhold.identity;

/** What a person is in the shop. */
public enum Role {
    WRITER,
    TECHNICIAN,
    CALIBRATOR,
    MANAGER,
    AUDITOR,
    /** Users, sites and tokens; no say over cars. */
    ADMINISTRATOR
}
