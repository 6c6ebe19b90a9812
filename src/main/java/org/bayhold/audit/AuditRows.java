package org.bayhold.audit;

/** Where the rows of an audit go, one after another. */
@FunctionalInterface
public interface AuditRows {
    void add(AuditedHandoff row);

    /** What was added so far may go out. */
    default void flush() {}
}
