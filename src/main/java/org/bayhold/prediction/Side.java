package org.bayhold.prediction;

import java.util.Map;
import java.util.stream.Collectors;

/**
 * One side of a comparison at a place: what is on the car, or what the calibration was written for.
 *
 * @param attributes as the catalogue has them; a factory part has none unless the catalogue holds them
 */
public record Side(State state, Map<String, Object> attributes) {
    public static final Side FACTORY = new Side(State.FACTORY, Map.of());
    public static final Side NONE = new Side(State.NONE, Map.of());
    public static final Side UNKNOWN = new Side(State.UNKNOWN, Map.of());

    public Side {
        attributes = recorded(attributes);
    }

    /** A name without a value records nothing. */
    static Map<String, Object> recorded(Map<String, Object> values) {
        return values.entrySet().stream()
                .filter(entry -> entry.getValue() != null)
                .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    public static Side part(Map<String, Object> attributes) {
        return new Side(State.PART, attributes);
    }

    /** What is known of a side. */
    public enum State {
        PART,
        FACTORY,
        NONE,
        UNKNOWN
    }

    boolean isUnknown() {
        return state == State.UNKNOWN;
    }

    boolean isEmpty() {
        return state == State.NONE;
    }
}
