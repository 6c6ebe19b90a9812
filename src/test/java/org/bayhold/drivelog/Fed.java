package org.bayhold.drivelog;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Hands the moments of a made drive to the judgement without a file in between, for thousands of them. */
final class Fed {
    private Fed() {}

    static Judgement judge(MadeDrive made) {
        return judge(made, EngineFacts.UNKNOWN);
    }

    static Judgement judge(MadeDrive made, EngineFacts facts) {
        Drive drive = new Drive(facts, Thresholds.DEFAULTS);
        Sample sample = new Sample();
        sample.time = Double.NaN;
        double[] seconds = {0};
        made.run(row -> {
            sample.row++;
            sample.seconds = Double.isNaN(sample.time) ? 0 : row.time() - sample.time;
            seconds[0] += sample.seconds;
            sample.time = row.time();
            put(sample, Parameter.ENGINE_SPEED, row.rpm());
            put(sample, Parameter.CALCULATED_LOAD, row.load());
            put(sample, Parameter.COOLANT_TEMPERATURE, row.coolant());
            put(sample, Parameter.INTAKE_AIR_TEMPERATURE, row.intakeAir());
            put(sample, Parameter.MANIFOLD_PRESSURE, row.manifold());
            put(sample, Parameter.AIRFLOW, row.airflow());
            put(sample, Parameter.ACCELERATOR, row.accelerator());
            put(sample, Parameter.SHORT_TRIM_1, row.short1());
            put(sample, Parameter.LONG_TRIM_1, row.long1());
            put(sample, Parameter.SHORT_TRIM_2, row.short2());
            put(sample, Parameter.LONG_TRIM_2, row.long2());
            put(sample, Parameter.INJECTOR_PULSE, row.pulse());
            put(sample, Parameter.FUEL_SYSTEM_STATUS, row.status() == 2 ? 1 : 0);
            put(sample, Parameter.COMMANDED_RATIO, row.commanded());
            put(sample, Parameter.MEASURED_LAMBDA, row.lambda());
            put(sample, Parameter.KNOCK_RETARD, row.knock());
            put(sample, Parameter.VEHICLE_SPEED, row.speed());
            drive.take(sample);
        });
        drive.finish();
        Set<Parameter> seen = EnumSet.allOf(Parameter.class);
        Quality quality = new Quality(
                0, sample.row, seconds[0], 1, sample.row, "", ',', '.', false, List.of(), seen, List.of(), 0);
        return Judging.of(drive, facts, Thresholds.DEFAULTS, quality);
    }

    private static void put(Sample sample, Parameter parameter, double value) {
        sample.values[parameter.index()] = value;
    }
}
