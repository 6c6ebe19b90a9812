package org.bayhold.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Objects;
import org.bayhold.page.Form;
import org.bayhold.page.Forms;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/** Gives page handlers the {@link Form}. */
final class FormResolver implements HandlerMethodArgumentResolver {
    private final Forms forms;

    FormResolver(Forms forms) {
        this.forms = forms;
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Form.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest web,
            @Nullable WebDataBinderFactory binders) {
        return forms.of(Objects.requireNonNull(web.getNativeRequest(HttpServletRequest.class)));
    }
}
