package org.bayhold.gate;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface CauseRows extends JpaRepository<CauseRow, CauseRow.Key> {
    @Query("select c from CauseRow c where c.itemId in ?1 order by c.recordedAt, c.code")
    List<CauseRow> of(Collection<UUID> itemIds);
}
