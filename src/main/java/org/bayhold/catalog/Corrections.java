package org.bayhold.catalog;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Corrections extends JpaRepository<CorrectionRow, UUID> {
    @Query("select c from CorrectionRow c where c.partSpecId in ?1 order by c.recordedAt, c.id")
    List<CorrectionRow> of(Collection<UUID> partSpecIds);

    @Query("select new org.bayhold.catalog.Correction(c.id, c.partSpecId, c.recordedAt) from CorrectionRow c"
            + " order by c.recordedAt, c.id")
    List<Correction> every();
}
