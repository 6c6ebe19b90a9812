package org.bayhold.gate;

import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface RetuneItemRows extends JpaRepository<RetuneItemRow, UUID> {
    @Query("select i from RetuneItemRow i where i.vehicleId = ?1 order by i.openedAt, i.id")
    List<RetuneItemRow> ofVehicle(UUID vehicleId);

    @Query("select i from RetuneItemRow i where i.clearedAt is null and i.id > ?1 order by i.id")
    List<RetuneItemRow> open(UUID after, Limit limit);

    @Query("select i from RetuneItemRow i where i.clearedAt is not null and i.id > ?1 order by i.id")
    List<RetuneItemRow> cleared(UUID after, Limit limit);

    @Query("select i from RetuneItemRow i where i.id > ?1 order by i.id")
    List<RetuneItemRow> all(UUID after, Limit limit);
}
