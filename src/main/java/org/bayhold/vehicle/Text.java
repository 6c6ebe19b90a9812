package org.bayhold.vehicle;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Typed text as it is kept. */
final class Text {
    private Text() {}

    /** Without blanks around it; null where nothing is left. */
    static @Nullable String strip(@Nullable String typed) {
        return typed == null || typed.isBlank() ? null : typed.strip();
    }

    static @Nullable String upper(@Nullable String typed) {
        String text = strip(typed);
        return text == null ? null : text.toUpperCase(Locale.ROOT);
    }
}
