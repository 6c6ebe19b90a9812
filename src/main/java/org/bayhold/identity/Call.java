package org.bayhold.identity;

import java.util.UUID;
import org.bayhold.journal.WriteRequest;
import org.jspecify.annotations.Nullable;

/** One request that writes: who asks, and how to know it again when it is sent twice. */
public record Call(Caller caller, @Nullable String idempotencyKey, String fingerprint) {
    public UUID by() {
        return caller.userId();
    }

    public WriteRequest request() {
        return new WriteRequest(caller.userId(), idempotencyKey, fingerprint);
    }
}
