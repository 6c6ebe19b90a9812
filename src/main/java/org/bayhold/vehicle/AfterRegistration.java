package org.bayhold.vehicle;

import org.bayhold.journal.OpenChain;

/** What the floors above add to a car's chain in the same write that registers it. */
public interface AfterRegistration {
    void registered(OpenChain chain, Registration registration);
}
