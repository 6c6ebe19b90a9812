package org.bayhold.identity;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Reads the roles of whoever is signed in anew at each request, so that a role taken away is gone at once, on every server. A
 * session that began with another password than the present one has ended.
 */
final class PresentRoles extends OncePerRequestFilter {
    private static final Set<String> FILES = Set.of("css", "js", "webjars");

    private final Users users;

    PresentRoles(Users users) {
        this.users = users;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String[] steps = request.getServletPath().split("/", -1);
        return steps.length > 1 && FILES.contains(steps[1]);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (SecurityContextHolder.getContext().getAuthentication() instanceof CallerAuthentication session) {
            Optional<UserRow> user = users.withRoles(session.getPrincipal().userId())
                    .filter(UserRow::enabled)
                    .filter(row -> Objects.equals(row.passwordSince(), session.passwordSince()));
            SecurityContext present = SecurityContextHolder.createEmptyContext();
            user.map(row -> row.caller())
                    .map(caller -> new CallerAuthentication(caller, session.passwordSince()))
                    .ifPresent(caller -> {
                        caller.setDetails(new WebAuthenticationDetails(request));
                        present.setAuthentication(caller);
                    });
            SecurityContextHolder.setContext(present);
            HttpSession ended = user.isPresent() ? null : request.getSession(false);
            if (ended != null) {
                ended.invalidate();
            }
        }
        chain.doFilter(request, response);
    }
}
