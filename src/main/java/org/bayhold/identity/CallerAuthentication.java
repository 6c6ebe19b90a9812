package org.bayhold.identity;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.AbstractAuthenticationToken;

/** A caller who has been recognised. */
final class CallerAuthentication extends AbstractAuthenticationToken {
    private static final long serialVersionUID = 1;

    private final Caller caller;
    private final @Nullable Instant passwordSince;

    CallerAuthentication(Caller caller) {
        this(caller, null);
    }

    /** @param passwordSince since when the password that was shown is what it is; null for a token, and for a first password */
    CallerAuthentication(Caller caller, @Nullable Instant passwordSince) {
        super(List.of());
        this.caller = caller;
        this.passwordSince = passwordSince;
        setAuthenticated(true);
    }

    @Nullable Instant passwordSince() {
        return passwordSince;
    }

    @Override
    public Object getCredentials() {
        return "";
    }

    @Override
    public Caller getPrincipal() {
        return caller;
    }

    @Override
    public String getName() {
        return caller.username();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof CallerAuthentication that && caller.equals(that.caller);
    }

    @Override
    public int hashCode() {
        return caller.hashCode();
    }
}
