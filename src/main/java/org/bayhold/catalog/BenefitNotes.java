package org.bayhold.catalog;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface BenefitNotes extends JpaRepository<BenefitNoteRow, UUID> {
    @Query("select n from BenefitNoteRow n where n.partSpecId in ?1 order by n.recordedAt, n.id")
    List<BenefitNoteRow> of(Collection<UUID> partSpecIds);
}
