package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface FactRows extends JpaRepository<FactRow, UUID> {
    /**
     * The CLEAR handover, written by the database only if the car is still at the place in its chain where the gate was
     * asked, and no item is open: 1, or 0 where a mistake elsewhere would have let a car out.
     */
    @Modifying(flushAutomatically = true)
    @Query(value = """
            insert into fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, basis, failed_checks,
                              rules)
            select :id, h.chain_id, :seq, 'HANDED_OVER', :effectiveAt, :recordedAt, :by, 'CLEAR', :failedChecks,
                   cast(:rules as integer)
            from chain_head h where h.chain_id = :vehicleId and h.seq = :seq and h.open_item_id is null
            """, nativeQuery = true)
    int insertClearHandover(
            UUID id,
            UUID vehicleId,
            long seq,
            Instant effectiveAt,
            Instant recordedAt,
            UUID by,
            int failedChecks,
            @Nullable Integer rules);

    @Query("select distinct f.vehicleId from FactRow f where f.partSpecId = ?1")
    List<UUID> carsOnWhichThePartWasChanged(UUID partSpecId);

    @Query("select distinct f.vehicleId from FactRow f join f.lines l where l.partSpecId = ?1")
    List<UUID> carsOnWhichThePartWasFound(UUID partSpecId);

    @Query("select distinct f.vehicleId from FactRow f where f.category = ?1")
    List<UUID> carsOnWhichTheCategoryWasChanged(String category);

    @Query("select distinct f.vehicleId from FactRow f join f.lines l where l.category = ?1")
    List<UUID> carsOnWhichTheCategoryWasFound(String category);

    @Query("select distinct f.vehicleId from FactRow f where f.calibrationId = ?1")
    List<UUID> carsFlashedWith(UUID calibrationId);

    @Query("select distinct f.vehicleId from FactRow f where f.calid = ?1 and f.cvn = ?2")
    List<UUID> carsReporting(@Nullable String calid, @Nullable String cvn);

    @Query("select distinct f.vehicleId from FactRow f where f.fileSha256 = ?1")
    List<UUID> carsReadOutAs(@Nullable String fileSha256);
}
