package org.bayhold.identity;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.bayhold.refusal.Code;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * A form with a file is read whole to find its token in it. So it stands before that: nobody who has not signed in makes the
 * server take a file, and nobody one that is larger than may be.
 */
final class OnlySignedInSend extends OncePerRequestFilter {
    private final long largest;

    OnlySignedInSend(long largest) {
        this.largest = largest;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String type = request.getContentType();
        if (type == null || !type.startsWith("multipart/")) {
            chain.doFilter(request, response);
            return;
        }
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        if (who == null || !(who.getPrincipal() instanceof Caller)) {
            response.sendRedirect(request.getContextPath() + PageSecurity.SIGN_IN);
        } else if (request.getContentLengthLong() > largest) {
            response.sendError(Code.TOO_LARGE.status());
        } else {
            chain.doFilter(request, response);
        }
    }
}
