package org.bayhold.journal;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Where the record does not hold together.
 *
 * @param chainId the chain; null where a row stands that belongs to none
 * @param seq place in the chain, from 1; null where a row stands that has no place in it
 * @param recordId the record at that place; null where it is missing and nobody can say which it was
 * @param what what is wrong, in words
 */
public record BrokenEntry(
        @Nullable UUID chainId,
        @Nullable Long seq,
        @Nullable UUID recordId,
        String what) {
    static BrokenEntry at(Entry entry, String what) {
        return new BrokenEntry(entry.chain(), entry.seq(), entry.id(), what);
    }

    static BrokenEntry at(StoredEntry stored, String what) {
        return new BrokenEntry(stored.chain(), stored.seq(), stored.id(), what);
    }
}
