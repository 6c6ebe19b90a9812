package org.bayhold.page;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.FlashMap;
import org.springframework.web.servlet.support.RequestContextUtils;

/** Makes {@link Form}s of requests. */
@Component
public class Forms {
    private final MessageSource messages;
    private final Validator validator;
    private final SiteTime time;

    Forms(MessageSource messages, Validator validator, SiteTime time) {
        this.messages = messages;
        this.validator = validator;
        this.time = time;
    }

    public Form of(HttpServletRequest request) {
        FlashMap flash = RequestContextUtils.getOutputFlashMap(request);
        return new Form(Map.copyOf(request.getParameterMap()), this, flash);
    }

    SiteTime time() {
        return time;
    }

    String sentence(String key, Object... arguments) {
        return messages.getMessage(
                key, Arrays.stream(arguments).map(String::valueOf).toArray(), Locale.ENGLISH);
    }

    List<ConstraintViolation<Object>> violations(Object request) {
        return validator.validate(request).stream()
                .sorted(Comparator.comparing(
                        violation -> violation.getPropertyPath().toString()))
                .toList();
    }
}
