package org.bayhold.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.bayhold.identity.ForEverybody;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;

/** Holds every handler of the project's own against the table of roles; one that says no act is refused to everybody. */
final class NeedsInterceptor implements HandlerInterceptor {
    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method
                && method.getBeanType().getPackageName().startsWith("org.bayhold")) {
            if (method.hasMethodAnnotation(ForEverybody.class)) {
                return true;
            }
            Needs needs = method.getMethodAnnotation(Needs.class);
            if (needs == null) {
                throw Refusal.forbidden("problem.forbidden");
            }
            CallResolver.caller().must(needs.value());
        }
        return true;
    }
}
