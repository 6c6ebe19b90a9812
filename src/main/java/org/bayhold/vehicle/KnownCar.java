package org.bayhold.vehicle;

import org.jspecify.annotations.Nullable;

/**
 * One of many cars, by what people call it.
 *
 * @param plate as it is now; null where none is on record, or it was erased
 */
public record KnownCar(
        Registration registration,
        @Nullable String vin,
        @Nullable String frameNumber,
        String description,
        @Nullable String plate) {}
