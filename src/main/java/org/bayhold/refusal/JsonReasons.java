package org.bayhold.refusal;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/** What is wrong with a JSON body, in words for the person who wrote it. */
public final class JsonReasons {
    private JsonReasons() {}

    public static Refusal of(@Nullable Throwable cause) {
        if (cause instanceof UnrecognizedPropertyException unknown) {
            return Refusal.invalid(path(unknown), "json.unknown-field", unknown.getPropertyName());
        }
        if (cause instanceof InvalidFormatException format) {
            return ofFormat(format);
        }
        if (cause instanceof MismatchedInputException mismatch
                && !mismatch.getPath().isEmpty()) {
            return Refusal.invalid(path(mismatch), "json.wrong-kind", path(mismatch));
        }
        if (cause instanceof StreamConstraintsException) {
            return Refusal.invalid("body", "json.limits");
        }
        if (cause instanceof JacksonException json && json.getCause() instanceof IllegalArgumentException) {
            return Refusal.invalid(path(json), "json.wrong-kind", path(json));
        }
        return Refusal.invalid("body", cause == null ? "json.missing" : "json.broken");
    }

    private static Refusal ofFormat(InvalidFormatException format) {
        Class<?> type = format.getTargetType();
        String field = path(format);
        if (type.isEnum()) {
            String allowed =
                    Arrays.stream(type.getEnumConstants()).map(String::valueOf).collect(Collectors.joining(", "));
            return Refusal.invalid(field, "json.not-one-of", field, allowed);
        }
        if (type == String.class) {
            return Refusal.invalid(field, "json.unstorable-text", field);
        }
        if (type == java.time.Instant.class) {
            return Refusal.invalid(field, "json.not-a-time", field);
        }
        if (type == java.util.UUID.class) {
            return Refusal.invalid(field, "json.not-a-uuid", field);
        }
        return Refusal.invalid(field, "json.wrong-kind", field);
    }

    /** {@code lines[0].category}. */
    private static String path(JacksonException failure) {
        StringBuilder path = new StringBuilder();
        for (JacksonException.Reference step : failure.getPath()) {
            if (step.getPropertyName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.isEmpty() ? "" : ".").append(step.getPropertyName());
            }
        }
        return path.isEmpty() ? "body" : path.toString();
    }
}
