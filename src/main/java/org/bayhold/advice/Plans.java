package org.bayhold.advice;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Plans extends JpaRepository<PlanRow, UUID> {
    @Query("select p from PlanRow p where p.vehicleId = ?1"
            + " and not exists (select d from DroppedPlanRow d where d.plannedWorkId = p.id) order by p.id")
    List<PlanRow> standingOn(UUID vehicleId);

    @Query("select p from PlanRow p where p.adviceId = ?1"
            + " and not exists (select d from DroppedPlanRow d where d.plannedWorkId = p.id) order by p.id")
    List<PlanRow> standingOf(UUID adviceId);
}
