package org.bayhold.journal;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Typed text as it is kept. */
public final class Text {
    private Text() {}

    /** Without blanks around it; null where nothing is left. */
    public static @Nullable String strip(@Nullable String typed) {
        return typed == null || typed.isBlank() ? null : typed.strip();
    }

    public static @Nullable String upper(@Nullable String typed) {
        String text = strip(typed);
        return text == null ? null : text.toUpperCase(Locale.ROOT);
    }

    public static @Nullable String lower(@Nullable String typed) {
        String text = strip(typed);
        return text == null ? null : text.toLowerCase(Locale.ROOT);
    }
}
