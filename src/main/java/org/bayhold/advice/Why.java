package org.bayhold.advice;

import java.util.List;

/** A sentence of the bundle with what it names: places, parts, revisions, texts. */
record Why(String key, List<Object> arguments) {
    Why {
        arguments = List.copyOf(arguments);
    }

    static Why of(String key, Object... arguments) {
        return new Why(key, List.of(arguments));
    }
}
