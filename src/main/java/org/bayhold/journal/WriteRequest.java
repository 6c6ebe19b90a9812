package org.bayhold.journal;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Who asks for a write, and how to know the same request again.
 *
 * @param idempotencyKey null where the caller sent none: then each request is a new one
 * @param fingerprint SHA-256 of what was asked
 */
public record WriteRequest(UUID by, @Nullable String idempotencyKey, String fingerprint) {
    /** A write of the application itself, on behalf of {@code by}. */
    public static WriteRequest internal(UUID by) {
        return new WriteRequest(by, null, "");
    }
}
