package org.bayhold.web;

import java.util.Locale;
import org.springframework.context.support.ResourceBundleMessageSource;

/** The sentences in {@code openapi.properties}, each of them a {@link java.text.MessageFormat}. */
final class ApiWords {
    private final ResourceBundleMessageSource source = new ResourceBundleMessageSource();

    ApiWords() {
        source.setBasename("openapi");
        source.setDefaultEncoding("UTF-8");
        source.setAlwaysUseMessageFormat(true);
        // a test misses the sentence; whoever reads the description should not
        source.setUseCodeAsDefaultMessage(true);
    }

    String of(String key, Object... arguments) {
        return source.getMessage(key, arguments, Locale.ENGLISH);
    }
}
