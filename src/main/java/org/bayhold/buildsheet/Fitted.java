package org.bayhold.buildsheet;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What sits at a place.
 *
 * @param partSpecId set exactly when {@code state} is PART
 */
public record Fitted(State state, @Nullable UUID partSpecId) {
    public static final Fitted FACTORY = new Fitted(State.FACTORY, null);
    public static final Fitted NONE = new Fitted(State.NONE, null);
    public static final Fitted UNKNOWN = new Fitted(State.UNKNOWN, null);

    public Fitted {
        if ((state == State.PART) != (partSpecId != null)) {
            throw new IllegalArgumentException("a part spec belongs to PART and to nothing else");
        }
    }

    public static Fitted part(UUID partSpecId) {
        return new Fitted(State.PART, partSpecId);
    }

    /** The four things that a place can hold. */
    public enum State {
        PART,
        FACTORY,
        NONE,
        UNKNOWN
    }
}
