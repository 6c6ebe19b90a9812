package org.bayhold.drivelog;

/** From what the airflow is known, the best last. {@code docs/drive-log.md, D8}. */
public enum AirSource {
    NONE,
    /** Ideal gas at the engine's displacement: an estimate. */
    IDEAL_GAS,
    /** From absolute load, which is air by its definition. */
    ABSOLUTE_LOAD,
    LOGGED
}
