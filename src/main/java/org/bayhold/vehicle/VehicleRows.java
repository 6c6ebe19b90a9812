package org.bayhold.vehicle;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface VehicleRows extends JpaRepository<VehicleRow, UUID> {
    Optional<VehicleRow> findByVin(String vin);

    boolean existsByFrameNumber(String frameNumber);

    /** Cars whose VIN, frame number, description, plate or owner's name holds the text, in the order of their ids. */
    @Query(value = """
            select v.* from vehicle v
            where v.id > :after
              and (lower(v.vin) like :q escape '!' or lower(v.frame_number) like :q escape '!'
                or lower(v.description) like :q escape '!'
                or exists (select 1 from personal_data p
                           where p.id in (v.plate_id, v.owner_name_id) and lower(p.text) like :q escape '!'))
            order by v.id limit :size
            """, nativeQuery = true)
    List<VehicleRow> find(String q, UUID after, int size);

    @Modifying(flushAutomatically = true)
    @Query("update VehicleRow v set v.ecuHardware = ?2, v.odometerKm = coalesce(?3, v.odometerKm),"
            + " v.inShop = ?4, v.staySince = ?5 where v.id = ?1")
    int now(UUID id, String ecuHardware, @Nullable Integer odometerKm, boolean inShop, @Nullable Instant staySince);

    /** The last to come first. */
    @Query("select v from VehicleRow v where v.inShop = true"
            + " order by coalesce(v.staySince, v.registeredAt) desc, v.id")
    List<VehicleRow> inShop(Limit limit);

    /** The last to leave first. */
    @Query("select v from VehicleRow v where v.inShop = false and v.staySince >= ?1 order by v.staySince desc, v.id")
    List<VehicleRow> leftSince(Instant since, Limit limit);
}
