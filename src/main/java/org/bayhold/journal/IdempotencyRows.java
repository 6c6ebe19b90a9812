package org.bayhold.journal;

import java.time.Instant;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface IdempotencyRows extends JpaRepository<IdempotencyRow, IdempotencyRow.Key> {
    @Modifying(flushAutomatically = true)
    @Query("update IdempotencyRow r set r.answer = ?3 where r.principal = ?1 and r.idemKey = ?2")
    int answer(UUID principal, String key, String answer);

    @Modifying
    @Query("delete from IdempotencyRow r where r.createdAt < ?1")
    int forgetBefore(Instant createdAt);
}
