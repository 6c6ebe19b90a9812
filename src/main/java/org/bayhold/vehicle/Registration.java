package org.bayhold.vehicle;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.obd.Reading;

/**
 * What a car was taken on with, as far as the build sheet stands on it.
 *
 * @param ecuHardware the ECU hardware number until an ECU change brings another
 * @param factoryReading CALID and CVN as the car left its maker, where known; else {@link Reading#NOTHING}
 */
public record Registration(
        UUID vehicleId, Baseline baseline, String ecuHardware, Reading factoryReading, Instant recordedAt) {}
