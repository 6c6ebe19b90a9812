package org.bayhold.identity;

import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.AuthenticationException;
import org.springframework.stereotype.Component;

/** Signatures on a page: whoever signs gives their password again. */
@Component
public class Signatures {
    private final SignIn signIn;

    Signatures(SignIn signIn) {
        this.signIn = signIn;
    }

    /** @throws Refusal INVALID where the password is not the caller's */
    public Call signed(Call call, @Nullable String password) {
        Caller caller = call.caller();
        if (known(caller.username(), password) == null) {
            throw Refusal.invalid("password", "signature.password");
        }
        return new Call(caller.signing(), call.idempotencyKey(), call.fingerprint());
    }

    /**
     * Another person, who signs as well.
     *
     * @return null where neither name nor password was given
     * @throws Refusal INVALID where they do not belong together
     */
    public @Nullable Caller second(@Nullable String name, @Nullable String password) {
        boolean named = name != null && !name.isBlank();
        if (!named && (password == null || password.isEmpty())) {
            return null;
        }
        Caller second = known(name == null ? "" : name.strip(), password);
        if (second == null) {
            throw Refusal.invalid("secondPassword", "signature.second");
        }
        return second.signing();
    }

    private @Nullable Caller known(String name, @Nullable String password) {
        try {
            return signIn.caller(name, password == null ? "" : password);
        } catch (AuthenticationException e) {
            return null;
        }
    }
}
