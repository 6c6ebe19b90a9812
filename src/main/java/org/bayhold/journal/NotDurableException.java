package org.bayhold.journal;

/** The database may forget what it has confirmed. */
final class NotDurableException extends RuntimeException {
    private static final long serialVersionUID = 1;

    NotDurableException(String setting) {
        super("PostgreSQL runs with " + setting + " off: it may lose or tear records that it has confirmed");
    }
}
