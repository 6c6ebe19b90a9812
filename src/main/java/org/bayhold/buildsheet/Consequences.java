package org.bayhold.buildsheet;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the floor above makes of a new fact in the same write: it opens, joins or closes the car's retune item. */
public interface Consequences {
    Effect of(OpenCar car, Fact fact);

    /** @param retuneItemId the item that is open because of the fact; null where there is none */
    record Effect(@Nullable UUID retuneItemId) {}
}
