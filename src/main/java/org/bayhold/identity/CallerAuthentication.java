package org.bayhold.identity;

import java.util.List;
import org.springframework.security.authentication.AbstractAuthenticationToken;

/** A caller who has been recognised. */
final class CallerAuthentication extends AbstractAuthenticationToken {
    private static final long serialVersionUID = 1;

    private final Caller caller;

    CallerAuthentication(Caller caller) {
        super(List.of());
        this.caller = caller;
        setAuthenticated(true);
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
    public boolean equals(@org.jspecify.annotations.Nullable Object other) {
        return other instanceof CallerAuthentication that && caller.equals(that.caller);
    }

    @Override
    public int hashCode() {
        return caller.hashCode();
    }
}
