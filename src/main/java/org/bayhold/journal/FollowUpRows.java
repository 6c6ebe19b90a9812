package org.bayhold.journal;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface FollowUpRows extends JpaRepository<FollowUpRow, UUID> {
    @Query("select f from FollowUpRow f where f.doneAt is null order by f.createdAt, f.id")
    List<FollowUpRow> open();

    @Query("select f from FollowUpRow f where f.subjectId = ?1 and f.doneAt is null")
    List<FollowUpRow> openOf(UUID subjectId);

    @Modifying
    @Query("update FollowUpRow f set f.doneAt = ?2 where f.id = ?1")
    int done(UUID id, Instant doneAt);
}
