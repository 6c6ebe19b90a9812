package org.bayhold.drivelog;

/** One row of a log, in the units of SAE J1979. */
record MadeRow(
        double time,
        double rpm,
        double load,
        double coolant,
        double intakeAir,
        double manifold,
        double airflow,
        double throttle,
        double accelerator,
        double short1,
        double long1,
        double short2,
        double long2,
        int status,
        double commanded,
        double lambda,
        double knock,
        double speed,
        double pulse,
        double absoluteLoad) {}
