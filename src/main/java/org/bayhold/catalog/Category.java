package org.bayhold.catalog;

import static org.bayhold.catalog.EffectGroup.AIR_METERING;
import static org.bayhold.catalog.EffectGroup.BOOST;
import static org.bayhold.catalog.EffectGroup.COMBUSTION;
import static org.bayhold.catalog.EffectGroup.CONTROL;
import static org.bayhold.catalog.EffectGroup.DRIVELINE;
import static org.bayhold.catalog.EffectGroup.EXHAUST;
import static org.bayhold.catalog.EffectGroup.FUEL_METERING;
import static org.bayhold.catalog.EffectGroup.NO_EFFECT;
import static org.bayhold.catalog.EffectGroup.UNSORTED;

/** What kind of part sits at a place, with the group in which it is born; a manager may move it to or from NO_EFFECT. */
public enum Category {
    AIR_FILTER(AIR_METERING),
    AIR_INTAKE(AIR_METERING),
    AIRFLOW_SENSOR(AIR_METERING),
    AIR_TEMPERATURE_SENSOR(AIR_METERING),
    THROTTLE_BODY(AIR_METERING),
    INTAKE_MANIFOLD(AIR_METERING),
    BYPASS_VALVE(AIR_METERING),
    CRANKCASE_VENTILATION(AIR_METERING),

    INJECTORS(FUEL_METERING),
    FUEL_PUMP(FUEL_METERING),
    HIGH_PRESSURE_FUEL_PUMP(FUEL_METERING),
    FUEL_PRESSURE_REGULATOR(FUEL_METERING),
    /** A condition rather than a part: a report of a fuel that the flashed revision names opens nothing. */
    FUEL(FUEL_METERING),
    FUEL_QUALITY_SENSOR(FUEL_METERING),
    AUXILIARY_INJECTION(FUEL_METERING),
    OXYGEN_SENSOR(FUEL_METERING),

    TURBOCHARGER(BOOST),
    WASTEGATE(BOOST),
    BOOST_CONTROL(BOOST),
    CHARGE_COOLER(BOOST),
    PRESSURE_SENSOR(BOOST),

    CAMSHAFT(COMBUSTION),
    CAM_TIMING(COMBUSTION),
    CYLINDER_HEAD(COMBUSTION),
    ROTATING_ASSEMBLY(COMBUSTION),
    IGNITION(COMBUSTION),
    SPARK_PLUGS(COMBUSTION),

    EXHAUST_MANIFOLD(EXHAUST),
    DOWNPIPE(EXHAUST),
    EMISSIONS_EQUIPMENT(EXHAUST),
    EXHAUST_REAR(EXHAUST),

    TRANSMISSION(DRIVELINE),
    CLUTCH_AND_FLYWHEEL(DRIVELINE),
    TYRES_AND_FINAL_DRIVE(DRIVELINE),

    ECU(CONTROL),

    OTHER_ENGINE(UNSORTED),

    COSMETIC(NO_EFFECT);

    private final EffectGroup born;

    Category(EffectGroup born) {
        this.born = born;
    }

    /** The group before any manager moved the category. */
    public EffectGroup born() {
        return born;
    }
}
