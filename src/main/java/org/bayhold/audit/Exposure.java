package org.bayhold.audit;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.vehicle.VehicleView;

/**
 * A car that is on the road now without a matching calibration.
 *
 * @param handoffId its last handover
 * @param unmatchedSince from when it has been so without a break
 * @param daysUnmatched days of 24 hours, to two places
 */
record Exposure(
        VehicleView vehicle,
        UUID handoffId,
        Instant handedOffAt,
        String handedOffBy,
        List<Finding> findings,
        Instant unmatchedSince,
        BigDecimal daysUnmatched) {}
