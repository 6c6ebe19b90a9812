package org.bayhold.identity;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface Tokens extends JpaRepository<TokenRow, UUID> {
    @Query("select t from TokenRow t join fetch t.user u left join fetch u.roles where t.tokenHash = ?1")
    Optional<TokenRow> byHash(String tokenHash);

    @Query("select t from TokenRow t where t.user.id = ?1 order by t.createdAt, t.id")
    List<TokenRow> ofUser(UUID userId);

    @Modifying(flushAutomatically = true)
    @Query("update TokenRow t set t.revokedAt = ?3 where t.id = ?1 and t.user.id = ?2 and t.revokedAt is null")
    int revoke(UUID id, UUID userId, Instant revokedAt);
}
