package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** The causes of retune items, for a record that is read without its journal entries; the gate keeps them. */
public interface CausesOfItems {
    /** @param recordedAt shared by the fact that told the cause */
    record Told(Cause cause, Instant recordedAt) {}

    /** The causes of every item of these cars, by item. */
    Map<UUID, List<Told>> ofCars(Collection<UUID> vehicleIds);
}
