package org.bayhold.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.journal.Hashing;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/** Gives handlers the {@link Caller}, and writing ones the {@link Call} with its idempotency key. */
final class CallResolver implements HandlerMethodArgumentResolver {
    /** The hidden field of a page that stands for the Idempotency-Key. */
    private static final String ONCE = "_once";

    private static final Set<String> NOT_TYPED = Set.of(ONCE, "_csrf");
    private static final int LONGEST_KEY = 255;

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Caller.class || parameter.getParameterType() == Call.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest web,
            @Nullable WebDataBinderFactory binders) {
        Caller caller = caller();
        if (parameter.getParameterType() == Caller.class) {
            return caller;
        }
        HttpServletRequest request = Objects.requireNonNull(web.getNativeRequest(HttpServletRequest.class));
        if (Addresses.isPage(request)) {
            return new Call(caller, key(request.getParameter(ONCE)), fingerprint(request));
        }
        return new Call(
                caller,
                "POST".equals(request.getMethod()) ? key(request.getHeader("Idempotency-Key")) : null,
                String.valueOf(request.getAttribute(BodyFilter.FINGERPRINT)));
    }

    /** What was typed, but for passwords, in the order of the fields' names; the same form sent twice has the same. */
    static String fingerprint(HttpServletRequest request) {
        StringBuilder typed = new StringBuilder(request.getMethod() + " " + request.getRequestURI());
        new TreeMap<>(request.getParameterMap()).forEach((name, values) -> {
            if (!NOT_TYPED.contains(name) && !Form.isSecret(name)) {
                typed.append('\n').append(name).append('=').append(Arrays.toString(values));
            }
        });
        return Hashing.sha256(typed.toString());
    }

    static Caller caller() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication != null && authentication.getPrincipal() instanceof Caller caller) {
            return caller;
        }
        throw Refusal.of(Code.UNAUTHENTICATED, "problem.unauthenticated");
    }

    /** Bare, or a quoted string as draft-ietf-httpapi-idempotency-key-header writes it. */
    static @Nullable String key(@Nullable String header) {
        if (header == null) {
            return null;
        }
        String key = header.strip();
        if (key.length() >= 2 && key.startsWith("\"") && key.endsWith("\"")) {
            key = key.substring(1, key.length() - 1);
        }
        if (key.isEmpty() || key.length() > LONGEST_KEY || key.chars().anyMatch(c -> c < ' ' || c > '~')) {
            throw Refusal.invalid("Idempotency-Key", "idempotency.key", LONGEST_KEY);
        }
        return key;
    }
}
