package org.bayhold.calibration;

import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Place;

/**
 * The parts that a revision was written for at one place. Several part specs are equal to the calibration.
 *
 * @param factoryAllowed the factory part is covered as well
 * @param noneAllowed an empty place is covered as well
 */
public record CoverageLine(Place place, List<UUID> partSpecIds, boolean factoryAllowed, boolean noneAllowed) {
    public CoverageLine {
        partSpecIds = List.copyOf(partSpecIds);
    }
}
