package org.bayhold.gate;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.CausesOfItems;
import org.bayhold.journal.Snapshots;
import org.springframework.stereotype.Component;

/** The causes of many cars' items in one question. */
@Component
class RecordedCauses implements CausesOfItems {
    private static final String OF_CARS = """
            select c.item_id, c.code, c.record_id, c.effective_at, c.recorded_at
            from retune_item i join retune_cause c on c.item_id = i.id
            where i.vehicle_id in (:ids)""";

    private record OfItem(UUID item, Told told) {}

    private final Snapshots snapshots;

    RecordedCauses(Snapshots snapshots) {
        this.snapshots = snapshots;
    }

    @Override
    public Map<UUID, List<Told>> ofCars(Collection<UUID> vehicleIds) {
        Map<UUID, List<Told>> causes = new HashMap<>();
        for (OfItem of : snapshots.rows(
                OF_CARS,
                Map.of("ids", vehicleIds),
                row -> new OfItem(
                        row.id(1),
                        new Told(new Cause(Cause.Code.valueOf(row.text(2)), row.id(3), row.time(4)), row.time(5))))) {
            causes.computeIfAbsent(of.item(), id -> new ArrayList<>()).add(of.told());
        }
        return causes;
    }
}
