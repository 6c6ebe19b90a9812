package org.bayhold.drivelog;

/** What kind of quantity a parameter is; only units of its own kind fit it. */
enum Dimension {
    TIME,
    ROTATION,
    PERCENT,
    TEMPERATURE,
    PRESSURE,
    FLOW,
    ANGLE,
    SPEED,
    PULSE,
    MIXTURE,
    VOLTAGE,
    STATUS
}
