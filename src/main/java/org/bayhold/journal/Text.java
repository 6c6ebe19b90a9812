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

    /** As names are compared that people type: "Second  Rail" and "second rail" are one. Null where nothing is left. */
    public static @Nullable String alike(@Nullable String typed) {
        String text = lower(typed);
        return text == null ? null : text.replaceAll("\\s+", " ");
    }

    /** No U+0000, which PostgreSQL refuses, and no half of a surrogate pair. */
    public static boolean isStorable(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0 || Character.isLowSurrogate(c)) {
                return false;
            }
            if (Character.isHighSurrogate(c)) {
                i++;
                if (i == text.length() || !Character.isLowSurrogate(text.charAt(i))) {
                    return false;
                }
            }
        }
        return true;
    }
}
