package org.bayhold.catalog;

/** How the ECU feels a change at a place. {@code docs/rules.md}, "Categories and effect groups". */
public enum EffectGroup {
    AIR_METERING,
    FUEL_METERING,
    BOOST,
    COMBUSTION,
    EXHAUST,
    DRIVELINE,
    CONTROL,
    /** Has an effect until proved otherwise. */
    UNSORTED,
    /** The only group whose changes open no retune item. */
    NO_EFFECT
}
