package org.bayhold.drivelog;

import java.util.List;

/** How values lie in the file. */
sealed interface Shape {
    /** One row for each moment. */
    record Samples(List<Column> columns) implements Shape {
        public Samples {
            columns = List.copyOf(columns);
        }
    }

    /**
     * One row for each reading: where in it stand time, name, value and unit.
     *
     * @param unit negative where there is none
     */
    record Readings(int time, int name, int value, int unit) implements Shape {}
}
