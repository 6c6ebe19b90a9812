package org.bayhold.identity;

import org.springframework.security.core.AuthenticationException;

/** Too many sign-ins failed for this name or from this address. */
final class TooManyTriesException extends AuthenticationException {
    private static final long serialVersionUID = 1;

    private final long seconds;

    /** @param seconds until the next try is looked at */
    TooManyTriesException(long seconds) {
        super("too many tries");
        this.seconds = seconds;
    }

    long seconds() {
        return seconds;
    }
}
