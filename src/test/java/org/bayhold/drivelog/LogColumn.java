package org.bayhold.drivelog;

import java.util.List;
import java.util.function.ToDoubleFunction;

/** What the made logs hold, as most of them name it. */
record LogColumn(String name, String unit, int decimals, ToDoubleFunction<MadeRow> value) {
    static final List<LogColumn> ALL = List.of(
            new LogColumn("Time", "s", 3, MadeRow::time),
            new LogColumn("Engine RPM", "rpm", 2, MadeRow::rpm),
            new LogColumn("Calculated engine load", "%", 2, MadeRow::load),
            new LogColumn("Engine coolant temperature", "C", 0, MadeRow::coolant),
            new LogColumn("Intake air temp", "C", 0, MadeRow::intakeAir),
            new LogColumn("Intake manifold pressure", "kPa", 0, MadeRow::manifold),
            new LogColumn("Mass air flow", "g/s", 2, MadeRow::airflow),
            new LogColumn("Throttle position", "%", 1, MadeRow::throttle),
            new LogColumn("Accelerator pedal position D", "%", 1, MadeRow::accelerator),
            new LogColumn("Short term fuel trim bank 1", "%", 2, MadeRow::short1),
            new LogColumn("Long term fuel trim bank 1", "%", 2, MadeRow::long1),
            new LogColumn("Short term fuel trim bank 2", "%", 2, MadeRow::short2),
            new LogColumn("Long term fuel trim bank 2", "%", 2, MadeRow::long2),
            new LogColumn("Fuel system status", "", 0, MadeRow::status),
            new LogColumn("Commanded equivalence ratio", "", 3, MadeRow::commanded),
            new LogColumn("Lambda", "", 3, MadeRow::lambda),
            new LogColumn("Knock retard", "deg", 1, MadeRow::knock),
            new LogColumn("Vehicle speed", "km/h", 0, MadeRow::speed),
            new LogColumn("Injector pulse width", "ms", 3, MadeRow::pulse));

    static final List<Parameter> PARAMETERS = List.of(
            Parameter.TIME,
            Parameter.ENGINE_SPEED,
            Parameter.CALCULATED_LOAD,
            Parameter.COOLANT_TEMPERATURE,
            Parameter.INTAKE_AIR_TEMPERATURE,
            Parameter.MANIFOLD_PRESSURE,
            Parameter.AIRFLOW,
            Parameter.THROTTLE,
            Parameter.ACCELERATOR,
            Parameter.SHORT_TRIM_1,
            Parameter.LONG_TRIM_1,
            Parameter.SHORT_TRIM_2,
            Parameter.LONG_TRIM_2,
            Parameter.FUEL_SYSTEM_STATUS,
            Parameter.COMMANDED_RATIO,
            Parameter.MEASURED_LAMBDA,
            Parameter.KNOCK_RETARD,
            Parameter.VEHICLE_SPEED,
            Parameter.INJECTOR_PULSE);
}
