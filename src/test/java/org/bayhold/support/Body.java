package org.bayhold.support;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

/** A JSON object on its way to the server. Each change gives a new one. */
public final class Body {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Map<String, @Nullable Object> fields;

    private Body(Map<String, @Nullable Object> fields) {
        this.fields = Collections.unmodifiableMap(fields);
    }

    public static Body empty() {
        return new Body(new LinkedHashMap<>());
    }

    public static Body of(String name, @Nullable Object value) {
        return empty().with(name, value);
    }

    public Body with(String name, @Nullable Object value) {
        Map<String, @Nullable Object> changed = new LinkedHashMap<>(fields);
        changed.put(name, plain(value));
        return new Body(changed);
    }

    /** A field as text, as it will be sent; empty where there is none. */
    public String text(String name) {
        Object value = fields.get(name);
        return value == null ? "" : value.toString();
    }

    public Body without(String name) {
        Map<String, @Nullable Object> changed = new LinkedHashMap<>(fields);
        changed.remove(name);
        return new Body(changed);
    }

    /** The object in field {@code name} with a line more. */
    public Body plus(String name, Body line) {
        Object before = fields.get(name);
        List<?> lines = before instanceof List<?> list ? list : List.of();
        return with(name, Stream.concat(lines.stream(), Stream.of(line.fields)).toList());
    }

    /** The same fact, happened at {@code effectiveAt}. */
    public Body at(Instant effectiveAt) {
        return with("effectiveAt", effectiveAt);
    }

    /** The same fact, done by somebody else and told to the shop. */
    public Body reported() {
        return with("source", "CUSTOMER_REPORTED");
    }

    @Override
    public String toString() {
        return JSON.writeValueAsString(fields);
    }

    private static @Nullable Object plain(@Nullable Object value) {
        if (value instanceof Body body) {
            return body.fields;
        }
        if (value instanceof List<?> list) {
            return list.stream().map(Body::plain).toList();
        }
        return value instanceof Instant || value instanceof Enum ? value.toString() : value;
    }
}
