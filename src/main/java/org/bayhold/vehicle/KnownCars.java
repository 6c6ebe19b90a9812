package org.bayhold.vehicle;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.Row;
import org.bayhold.journal.Snapshots;
import org.bayhold.obd.Reading;
import org.springframework.stereotype.Component;

/** Many cars in one question. */
@Component
public class KnownCars {
    private static final String BY_ID = """
            select v.id, v.baseline, v.registered_ecu, v.factory_calid, v.factory_cvn, v.registered_at,
                   v.vin, v.frame_number, v.description, p.text
            from vehicle v left join personal_data p on p.id = v.plate_id
            where v.id in (:ids) order by v.id""";

    private final Snapshots snapshots;

    KnownCars(Snapshots snapshots) {
        this.snapshots = snapshots;
    }

    /** The cars of these ids; unknown ids are left out. */
    public List<KnownCar> of(Collection<UUID> ids) {
        return ids.isEmpty() ? List.of() : snapshots.rows(BY_ID, Map.of("ids", ids), KnownCars::car);
    }

    private static KnownCar car(Row row) {
        Registration registration = new Registration(
                row.id(1),
                Baseline.valueOf(row.text(2)),
                row.text(3),
                new Reading(row.textOrNull(4), row.textOrNull(5), null),
                row.time(6));
        return new KnownCar(registration, row.textOrNull(7), row.textOrNull(8), row.text(9), row.textOrNull(10));
    }
}
