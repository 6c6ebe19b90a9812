package org.bayhold.identity;

import java.time.Duration;
import java.util.Locale;
import java.util.Objects;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;

/** Name and password. An unknown name takes as long as a wrong password, so that names cannot be found out by time. */
@Component
class SignIn implements AuthenticationProvider {
    private final Users users;
    private final PasswordEncoder passwords;
    private final SignInThrottle throttle;
    private final String nobodysHash;

    SignIn(Users users, PasswordEncoder passwords, SignInThrottle throttle) {
        this.users = users;
        this.passwords = passwords;
        this.throttle = throttle;
        this.nobodysHash = Objects.requireNonNull(passwords.encode("nobody has this password"));
    }

    @Override
    public Authentication authenticate(Authentication authentication) throws AuthenticationException {
        String name = authentication.getName().strip().toLowerCase(Locale.ROOT);
        String address =
                authentication.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        Duration wait = throttle.waitOf(name, address);
        if (!wait.isZero()) {
            throw new TooManyTriesException(wait.toSeconds() + 1);
        }
        try {
            Authentication signedIn = check(name, String.valueOf(authentication.getCredentials()));
            throttle.succeeded(name, address);
            return signedIn;
        } catch (BadCredentialsException e) {
            throttle.failed(name, address);
            throw e;
        }
    }

    private Authentication check(String name, String password) {
        var user = users.named(name);
        boolean matches =
                passwords.matches(password, user.map(UserRow::passwordHash).orElse(nobodysHash));
        return user.filter(row -> matches && row.enabled())
                .map(row -> new CallerAuthentication(row.caller(), row.passwordSince()))
                .orElseThrow(() -> new BadCredentialsException("name or password is wrong"));
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
    }
}
