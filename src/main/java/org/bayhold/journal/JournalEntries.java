package org.bayhold.journal;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface JournalEntries extends JpaRepository<JournalRow, JournalRow.Key> {
    @Query("select e.body from JournalRow e where e.chainId = ?1 order by e.seq")
    List<String> bodiesOf(UUID chainId);

    @Query("select e.body from JournalRow e where e.id in ?1")
    List<String> bodies(Collection<UUID> ids);

    @Query("select e.hash from JournalRow e where e.id = ?1")
    Optional<String> hashOf(UUID id);

    @Query("select e.chainId from JournalRow e where e.id = ?1")
    Optional<UUID> chainOf(UUID id);
}
