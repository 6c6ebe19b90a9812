package org.bayhold.drives;

import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.Snapshots;
import org.springframework.stereotype.Component;

/** Questions to the typed columns of drives of many cars. */
@Component
class DriveLogRows {
    private static final String ON_ANOTHER_CAR = """
            select f.vehicle_id from fact f
            where f.kind = 'DRIVE_LOGGED' and f.file_sha256 = :sha256 and f.vehicle_id <> :car
              and not exists (select 1 from fact v where v.kind = 'VOIDED' and v.target_id = f.id)
            limit 1""";

    private final Snapshots snapshots;

    DriveLogRows(Snapshots snapshots) {
        this.snapshots = snapshots;
    }

    /** A drive is one car's: the same file on another car is a slip of somebody's, on one of the two. */
    boolean isOnAnotherCar(String sha256, UUID vehicleId) {
        return !snapshots
                .rows(ON_ANOTHER_CAR, Map.of("sha256", sha256, "car", vehicleId), row -> row.id(1))
                .isEmpty();
    }
}
