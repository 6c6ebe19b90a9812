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
            insert into fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, basis, failed_checks)
            select :id, h.chain_id, :seq, 'HANDED_OVER', :effectiveAt, :recordedAt, :by, 'CLEAR', :failedChecks
            from chain_head h where h.chain_id = :vehicleId and h.seq = :seq and h.open_item_id is null
            """, nativeQuery = true)
    int insertClearHandover(
            UUID id, UUID vehicleId, long seq, Instant effectiveAt, Instant recordedAt, UUID by, int failedChecks);

    /** Cars whose record names a part, on a part change or an inspection. */
    @Query(value = """
            select f.vehicle_id from fact f where f.part_spec_id = :partSpecId
            union select f.vehicle_id from inspection_line l join fact f on f.id = l.fact_id
                  where l.part_spec_id = :partSpecId
            """, nativeQuery = true)
    List<UUID> vehiclesNamingPart(UUID partSpecId);

    /** Cars whose record names a category, on a part change or an inspection. */
    @Query(value = """
            select f.vehicle_id from fact f where f.category = :category
            union select f.vehicle_id from inspection_line l join fact f on f.id = l.fact_id
                  where l.category = :category
            """, nativeQuery = true)
    List<UUID> vehiclesNamingCategory(String category);

    /** Cars that a revision was flashed into, or whose ECU reported what it reports. */
    @Query(value = """
            select f.vehicle_id from fact f where f.calibration_id = :calibrationId
            union select f.vehicle_id from fact f where f.calid = :calid and f.cvn = :cvn
            union select f.vehicle_id from fact f where f.file_sha256 = :fileSha256
            """, nativeQuery = true)
    List<UUID> vehiclesRunning(
            UUID calibrationId, @Nullable String calid, @Nullable String cvn, @Nullable String fileSha256);
}
