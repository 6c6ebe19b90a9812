package org.bayhold.support;

import java.util.Locale;

/** The users of the demo profile, each with the one role that its name says. */
public enum Role {
    WRITER,
    TECH,
    CALIBRATOR,
    MANAGER,
    AUDITOR,
    ADMIN;

    public String user() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether tokens of this role are made for signatures here. */
    boolean signs() {
        return this == CALIBRATOR || this == MANAGER;
    }
}
