package org.bayhold.refusal;

import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A request is refused and nothing has changed. The sentences live in {@code messages.properties} under the reasons' keys.
 */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Code code;
    private final transient List<Reason> reasons;

    /**
     * Why.
     *
     * @param field the field that it concerns, as a JSON path; null where it concerns the whole request
     * @param key the sentence's key in the bundle
     * @param arguments what the sentence names
     */
    public record Reason(@Nullable String field, String key, List<Object> arguments) {
        public Reason {
            arguments = List.copyOf(arguments);
        }
    }

    public Refusal(Code code, List<Reason> reasons) {
        super(code + " " + reasons, null, false, false);
        this.code = code;
        this.reasons = List.copyOf(reasons);
    }

    private Refusal(Code code, @Nullable String field, String key, Object... arguments) {
        this(code, List.of(new Reason(field, key, List.of(arguments))));
    }

    public Code code() {
        return code;
    }

    public List<Reason> reasons() {
        return reasons;
    }

    /** The same refusal of a part of a larger request: each field's name begins with {@code prefix}. */
    public Refusal within(String prefix) {
        return renamed(field -> prefix + field);
    }

    /** The same refusal with the names that its fields have elsewhere. */
    public Refusal renamed(UnaryOperator<String> names) {
        return new Refusal(
                code,
                reasons.stream()
                        .map(reason -> new Reason(
                                reason.field() == null ? null : names.apply(reason.field()),
                                reason.key(),
                                reason.arguments()))
                        .toList());
    }

    public static Refusal invalid(String field, String key, Object... arguments) {
        return new Refusal(Code.INVALID, field, key, arguments);
    }

    public static Refusal notFound(String key, Object... arguments) {
        return new Refusal(Code.NOT_FOUND, null, key, arguments);
    }

    public static Refusal conflict(String field, String key, Object... arguments) {
        return new Refusal(Code.CONFLICT, field, key, arguments);
    }

    public static Refusal forbidden(String key, Object... arguments) {
        return new Refusal(Code.FORBIDDEN, null, key, arguments);
    }

    public static Refusal of(Code code, String key, Object... arguments) {
        return new Refusal(code, null, key, arguments);
    }
}
