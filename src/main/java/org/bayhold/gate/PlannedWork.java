package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarState;

/** What is planned on a car and not done yet: the floors above know. */
public interface PlannedWork {
    /** In the order in which it was planned. */
    List<Planned> on(CarState car);

    /**
     * Work to be done.
     *
     * @param answer the page of the answer that it became of
     * @param changes each in a line
     * @param install the page on which it is logged, filled in
     */
    record Planned(UUID adviceId, Instant at, String answer, List<String> changes, String install) {}
}
