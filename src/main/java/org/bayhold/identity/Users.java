package org.bayhold.identity;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface Users extends JpaRepository<UserRow, UUID> {
    @Query("select u from UserRow u left join fetch u.roles where u.username = ?1")
    Optional<UserRow> named(String username);

    @Modifying
    @Query("update UserRow u set u.passwordHash = ?2 where u.id = ?1")
    int password(UUID id, String passwordHash);
}
