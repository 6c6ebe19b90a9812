package org.bayhold.journal;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface ChainHeads extends JpaRepository<ChainHead, UUID> {
    /** Step 1 of a write: whoever updates the row first has the chain to itself until it commits. */
    @Modifying(flushAutomatically = true, clearAutomatically = true)
    @Query("update ChainHead h set h.seq = h.seq + 1 where h.chainId = ?1")
    int advance(UUID chainId);

    @Modifying(flushAutomatically = true)
    @Query("update ChainHead h set h.seq = ?2, h.lastHash = ?3, h.lastRecordedAt = ?4, h.openItemId = ?5"
            + " where h.chainId = ?1")
    int close(UUID chainId, long seq, String lastHash, Instant lastRecordedAt, @Nullable UUID openItemId);
}
