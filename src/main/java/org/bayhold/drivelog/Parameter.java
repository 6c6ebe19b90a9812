package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * What is read of a recorded drive, with what a sensor of SAE J1979 can give (the ends of its scaling, check values in
 * {@code ParameterTest}); where the standard has none, what no engine does (common practice). {@code docs/drive-log.md, D3
 * and D6}.
 */
public enum Parameter {
    TIME(Dimension.TIME, -Double.MAX_VALUE, Double.MAX_VALUE),
    ENGINE_SPEED(Dimension.ROTATION, 0, 16_383.75),
    CALCULATED_LOAD(Dimension.PERCENT, 0, 100),
    ABSOLUTE_LOAD(Dimension.PERCENT, 0, 25_700),
    COOLANT_TEMPERATURE(Dimension.TEMPERATURE, -40, 215),
    INTAKE_AIR_TEMPERATURE(Dimension.TEMPERATURE, -40, 215),
    /** PID 0B ends at 255 kPa; the wider ones of boosted engines at 2,550 (from memory). */
    MANIFOLD_PRESSURE(Dimension.PRESSURE, 0, 2_550),
    BAROMETRIC_PRESSURE(Dimension.PRESSURE, 0, 255),
    AIRFLOW(Dimension.FLOW, 0, 2_550),
    THROTTLE(Dimension.PERCENT, 0, 100),
    ACCELERATOR(Dimension.PERCENT, 0, 100),
    SHORT_TRIM_1(Dimension.PERCENT, -100, 99.22),
    LONG_TRIM_1(Dimension.PERCENT, -100, 99.22),
    SHORT_TRIM_2(Dimension.PERCENT, -100, 99.22),
    LONG_TRIM_2(Dimension.PERCENT, -100, 99.22),
    /** 1 where the fuel system runs in closed loop, 0 where it does not. */
    FUEL_SYSTEM_STATUS(Dimension.STATUS, 0, 1),
    COMMANDED_RATIO(Dimension.MIXTURE, 0.1, 2),
    MEASURED_LAMBDA(Dimension.MIXTURE, 0.1, 16),
    IGNITION_ADVANCE(Dimension.ANGLE, -64, 63.5),
    KNOCK_RETARD(Dimension.ANGLE, -64, 64),
    VEHICLE_SPEED(Dimension.SPEED, 0, 500),
    INJECTOR_PULSE(Dimension.PULSE, 0, 200),
    RAIL_PRESSURE(Dimension.PRESSURE, 0, 655_350),
    ETHANOL_PERCENT(Dimension.PERCENT, 0, 100),
    MODULE_VOLTAGE(Dimension.VOLTAGE, 0, 65.535);

    /** Room for one value of each. */
    static final int COUNT = values().length;

    private final Dimension dimension;
    private final double lowest;
    private final double highest;

    Parameter(Dimension dimension, double lowest, double highest) {
        this.dimension = dimension;
        this.lowest = lowest;
        this.highest = highest;
    }

    /** By its own name, however that is written, or by one of those that a column may bear; null where it is none. */
    public static @Nullable Parameter named(String text) {
        String plain = Names.plain(text);
        for (Parameter parameter : values()) {
            if (Names.plain(parameter.name()).equals(plain)) {
                return parameter;
            }
        }
        Names.Named named = Names.of(text);
        return named == null ? null : named.parameter();
    }

    /** Where it stands in arrays of one value each, within one run. */
    @SuppressWarnings("EnumOrdinal")
    int index() {
        return ordinal();
    }

    Dimension dimension() {
        return dimension;
    }

    /** In the unit that is judged in. */
    public double lowest() {
        return lowest;
    }

    public double highest() {
        return highest;
    }

    /** The unit that is judged in. */
    public Unit unit() {
        return Unit.usual(dimension);
    }

    /** Changes so slowly that a value holds for half a minute until the next one. */
    boolean isSlow() {
        return dimension == Dimension.TEMPERATURE
                || this == BAROMETRIC_PRESSURE
                || this == ETHANOL_PERCENT
                || this == MODULE_VOLTAGE;
    }
}
