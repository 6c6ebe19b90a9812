package org.bayhold.web;

import jakarta.servlet.http.HttpServletRequest;

/** Which addresses are pages for people, and which are for programs. */
final class Addresses {
    private Addresses() {}

    static boolean isPage(HttpServletRequest request) {
        String path = request.getRequestURI().substring(request.getContextPath().length());
        return !path.startsWith("/api/") && !path.startsWith("/actuator/") && !path.startsWith("/v3/");
    }
}
