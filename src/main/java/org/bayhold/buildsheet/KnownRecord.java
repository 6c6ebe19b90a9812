package org.bayhold.buildsheet;

import org.bayhold.vehicle.KnownCar;

/** One of many cars, with its record. */
public record KnownRecord(KnownCar car, CarRecord record) {}
