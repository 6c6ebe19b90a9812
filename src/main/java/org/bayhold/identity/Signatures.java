package org.bayhold.identity;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.stereotype.Component;

/** Signing in a page: whoever signs shows the password again, for this one request. */
@Component
public class Signatures {
    private final SignIn signIn;
    private final HttpSessionSecurityContextRepository sessions = new HttpSessionSecurityContextRepository();

    Signatures(SignIn signIn) {
        this.signIn = signIn;
    }

    /**
     * The same call, by somebody who may sign for it.
     *
     * @throws Refusal INVALID for the field {@code password} where it is missing or wrong; TOO_MANY_REQUESTS after too
     *     many wrong ones
     */
    public Call sign(Call call, @Nullable String password) {
        Caller same = check(call.caller().username(), password, "password");
        if (!same.userId().equals(call.caller().userId())) {
            throw Refusal.invalid("password", "signature.wrong");
        }
        return new Call(call.caller().signing(), call.idempotencyKey(), call.fingerprint());
    }

    /**
     * Another person who signs the same page with name and password.
     *
     * @param field the form's field of the password, for the refusal
     */
    public Caller second(@Nullable String username, @Nullable String password, String field) {
        if (username == null || username.isBlank()) {
            throw Refusal.invalid(field, "signature.second-missing");
        }
        return check(username.strip(), password, field).signing();
    }

    /** Goes on with the session under a new password; its old id is worth nothing any more. */
    void renew(String username, String password, HttpServletRequest request, HttpServletResponse response) {
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(signIn.authenticate(shown(username, password)));
        SecurityContextHolder.setContext(context);
        String ignored = request.changeSessionId();
        sessions.saveContext(context, request, response);
    }

    private Caller check(String username, @Nullable String password, String field) {
        if (password == null || password.isEmpty()) {
            throw Refusal.invalid(field, "signature.missing");
        }
        try {
            if (signIn.authenticate(shown(username, password)).getPrincipal() instanceof Caller caller) {
                return caller;
            }
        } catch (TooManyTriesException e) {
            throw Refusal.of(Code.TOO_MANY_REQUESTS, "sign-in.too-many");
        } catch (AuthenticationException e) {
            throw Refusal.invalid(field, "signature.wrong");
        }
        throw Refusal.invalid(field, "signature.wrong");
    }

    /** Where the request came from counts against guessing, as at sign-in. */
    private static UsernamePasswordAuthenticationToken shown(String username, String password) {
        UsernamePasswordAuthenticationToken shown =
                UsernamePasswordAuthenticationToken.unauthenticated(username, password);
        var session = SecurityContextHolder.getContext().getAuthentication();
        shown.setDetails(session == null ? null : session.getDetails());
        return shown;
    }
}
