package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/** By what a drive tells how hard the engine worked; the first that the log has. {@code docs/drive-log.md, D9}. */
public enum LoadAxis {
    CALCULATED_LOAD(Parameter.CALCULATED_LOAD, 10, 8),
    ABSOLUTE_LOAD(Parameter.ABSOLUTE_LOAD, 10, 8),
    MANIFOLD_PRESSURE(Parameter.MANIFOLD_PRESSURE, 10, 8),
    AIRFLOW(Parameter.AIRFLOW, 10, 0);

    private static final double AIRFLOW_SHARE = 0.15;
    private static final double AIRFLOW_LEAST = 0.5;

    private final Parameter parameter;
    private final double step;
    private final double tolerance;

    LoadAxis(Parameter parameter, double step, double tolerance) {
        this.parameter = parameter;
        this.step = step;
        this.tolerance = tolerance;
    }

    public Parameter parameter() {
        return parameter;
    }

    /** Between two cells, in the parameter's unit. */
    double step() {
        return step;
    }

    /** Within which a load is steady. */
    double tolerance(double load) {
        return this == AIRFLOW ? AIRFLOW_LEAST + AIRFLOW_SHARE * load : tolerance;
    }

    /** Null where a moment has none. */
    static @Nullable LoadAxis of(Sample sample) {
        for (LoadAxis axis : values()) {
            if (sample.has(axis.parameter)) {
                return axis;
            }
        }
        return null;
    }
}
