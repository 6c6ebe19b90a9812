package org.bayhold.identity;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.bayhold.refusal.Code;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;
import org.springframework.security.web.csrf.CsrfException;

/**
 * A form that comes after its session ended is not lost: the sign-in page carries what was typed along, and after the
 * sign-in shows it again to be sent. Only forms of this site's own pages are carried, so that no other site can put words
 * into somebody's mouth.
 */
final class EndedSession {
    /** The address that the form was for, as a request parameter. */
    static final String TO = "_to";

    private static final String AGAIN = PageSecurity.SIGN_IN + "/again";

    private final AuthenticationSuccessHandler toThePageAskedFor;
    private final AuthenticationEntryPoint toSignIn;

    EndedSession(AuthenticationSuccessHandler toThePageAskedFor, AuthenticationEntryPoint toSignIn) {
        this.toThePageAskedFor = toThePageAskedFor;
        this.toSignIn = toSignIn;
    }

    /** Nobody is signed in, and the page is not open. */
    void unknown(HttpServletRequest request, HttpServletResponse response, AuthenticationException failure)
            throws IOException, ServletException {
        if (request.getHeader("HX-Request") != null) {
            // a part of a page that is open: its own next step asks for the sign-in
            response.sendError(Code.UNAUTHENTICATED.status());
        } else if (isOwnForm(request)) {
            forward(AGAIN, request, response);
        } else {
            toSignIn.commence(request, response, failure);
        }
    }

    /** The chain refuses only what has no valid form token; what a role may do is decided further in. */
    void refused(HttpServletRequest request, HttpServletResponse response, AccessDeniedException denied)
            throws IOException, ServletException {
        if (denied instanceof CsrfException && isOwnForm(request)) {
            forward(AGAIN, request, response);
        } else {
            response.sendError(Code.FORBIDDEN.status());
        }
    }

    void signedIn(HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws IOException, ServletException {
        if (request.getParameter(TO) == null) {
            toThePageAskedFor.onAuthenticationSuccess(request, response, authentication);
        } else {
            forward(PageSecurity.SIGN_IN + "/resumed", request, response);
        }
    }

    void notSignedIn(HttpServletRequest request, HttpServletResponse response, AuthenticationException failure)
            throws IOException, ServletException {
        request.setAttribute(
                SignInPage.REFUSED, failure instanceof TooManyTriesException ? "sign-in.too-many" : "sign-in.wrong");
        forward(AGAIN, request, response);
    }

    private static boolean isOwnForm(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        return "POST".equals(request.getMethod())
                && (site == null ? isOwnOrigin(request.getHeader("Origin"), request) : site.equals("same-origin"));
    }

    private static boolean isOwnOrigin(@org.jspecify.annotations.Nullable String origin, HttpServletRequest request) {
        return origin != null && origin.replaceFirst("^https?://", "").equals(request.getHeader("Host"));
    }

    private static void forward(String to, HttpServletRequest request, HttpServletResponse response)
            throws IOException, ServletException {
        request.getRequestDispatcher(to).forward(request, response);
    }
}
