package org.bayhold.journal;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What was done to a record, and where its verification has to find it.
 *
 * @param recordId null where the record is gone and left nothing behind
 */
record Tampering(
        String what,
        @Nullable UUID chainId,
        @Nullable Long seq,
        @Nullable UUID recordId) {
    static Tampering at(Stored entry, String what) {
        return new Tampering(what, entry.chain(), entry.seq(), entry.id());
    }

    boolean isFoundAs(@Nullable BrokenEntry broken) {
        return broken != null
                && java.util.Objects.equals(chainId, broken.chainId())
                && java.util.Objects.equals(seq, broken.seq())
                && java.util.Objects.equals(recordId, broken.recordId());
    }

    /** An entry as it stood before. */
    record Stored(UUID chain, long seq, UUID id, String kind, String body, String hash) {}
}
