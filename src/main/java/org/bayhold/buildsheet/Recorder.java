package org.bayhold.buildsheet;

import java.util.Set;
import java.util.UUID;
import tools.jackson.databind.node.ObjectNode;

/**
 * How one kind of fact is recorded from a request.
 *
 * @param <R> what is asked
 * @param <V> what is answered
 */
abstract class Recorder<R extends FactRequest, V> {
    private final Class<R> request;
    private final Class<V> view;
    private final Class<? extends Fact> kind;

    Recorder(Class<R> request, Class<V> view, Class<? extends Fact> kind) {
        this.request = request;
        this.view = view;
        this.kind = kind;
    }

    final Class<R> request() {
        return request;
    }

    final Class<V> view() {
        return view;
    }

    /** The kind of fact that this records. */
    final Class<? extends Fact> kind() {
        return kind;
    }

    /** The revisions that the request names. */
    Set<UUID> cites(R request) {
        return Set.of();
    }

    /**
     * The fact that the request asks for.
     *
     * @param before the car as it stood at the fact's effective time
     * @throws org.bayhold.refusal.Refusal INVALID where the request cannot be right
     */
    abstract Fact fact(OpenCar car, CarState before, Stamp stamp, R request);

    /** Adds to the answer what only this kind has. */
    void describe(OpenCar car, CarState before, Fact fact, ObjectNode answer) {}
}
