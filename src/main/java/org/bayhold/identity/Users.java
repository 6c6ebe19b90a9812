package org.bayhold.identity;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;
import org.springframework.transaction.annotation.Transactional;

interface Users extends JpaRepository<UserRow, UUID> {
    @Query("select u from UserRow u left join fetch u.roles where u.username = ?1")
    Optional<UserRow> named(String username);

    @Query("select u from UserRow u left join fetch u.roles where u.id = ?1")
    Optional<UserRow> withRoles(UUID id);

    @Query("select distinct u from UserRow u left join fetch u.roles order by u.username")
    List<UserRow> withRoles();

    @Modifying
    @Transactional
    @Query("update UserRow u set u.passwordHash = ?2 where u.username in ?1")
    void passwords(Collection<String> usernames, String passwordHash);
}
