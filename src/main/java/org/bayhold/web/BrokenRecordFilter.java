package org.bayhold.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.bayhold.journal.BrokenEntry;
import org.bayhold.journal.Standing;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Problems;
import org.bayhold.refusal.Refusal;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/**
 * Where the record is broken, answers every request with what to do about it, before anything else looks at the request.
 * Only the state of health is told, so that whoever watches the server learns of it.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class BrokenRecordFilter extends OncePerRequestFilter {
    private static final String HEALTH = "/actuator/health";

    private final Standing standing;
    private final Problems problems;
    private final ITemplateEngine templates;
    private final WebSettings settings;

    BrokenRecordFilter(Standing standing, Problems problems, ITemplateEngine templates, WebSettings settings) {
        this.standing = standing;
        this.problems = problems;
        this.templates = templates;
        this.settings = settings;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<BrokenEntry> broken = standing.broken();
        // the container's path, not the raw one: /actuator/health/../../api is another address
        String path = request.getServletPath();
        if (broken.isEmpty() || path.equals(HEALTH) || path.startsWith(HEALTH + "/")) {
            chain.doFilter(request, response);
        } else if (wantsPage(request)) {
            page(broken.get(), response);
        } else {
            problems.write(Refusal.of(Code.UNAVAILABLE, "record.broken"), request, response);
        }
    }

    private static boolean wantsPage(HttpServletRequest request) {
        try {
            List<MediaType> accepted = MediaType.parseMediaTypes(request.getHeader(HttpHeaders.ACCEPT));
            return accepted.stream().anyMatch(type -> type.equalsTypeAndSubtype(MediaType.TEXT_HTML));
        } catch (InvalidMediaTypeException e) {
            return false;
        }
    }

    /** No style and no picture: those have addresses too. */
    private void page(BrokenEntry broken, HttpServletResponse response) throws IOException {
        response.setStatus(Code.UNAVAILABLE.status());
        Problems.retryAfter(Code.UNAVAILABLE, response);
        response.setContentType("text/html;charset=UTF-8");
        response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        response.setHeader("Content-Security-Policy", "default-src 'none'; base-uri 'none'; frame-ancestors 'none'");
        response.setHeader("X-Content-Type-Options", "nosniff");
        Map<String, Object> model = new java.util.HashMap<>();
        model.put("broken", broken);
        model.put("operator", settings.operator());
        templates.process("broken-record", new Context(Locale.ENGLISH, model), response.getWriter());
    }
}
