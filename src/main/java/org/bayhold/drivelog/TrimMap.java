package org.bayhold.drivelog;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Total trim over engine speed and load, warm, in closed loop and steady. {@code docs/drive-log.md, D9}.
 *
 * @param axis null where there is no cell
 * @param cells only those in which the engine ran
 */
public record TrimMap(@Nullable LoadAxis axis, List<Cell> cells) {
    public TrimMap {
        cells = List.copyOf(cells);
    }

    /**
     * One cell, closed below and open above. Percent; a bank that is not logged is null.
     *
     * @param loadFrom in the unit of the axis
     * @param firstRow the first and the last line that went into it
     */
    public record Cell(
            double rpmFrom,
            double rpmTo,
            double loadFrom,
            double loadTo,
            double seconds,
            @Nullable Double bank1Percent,
            @Nullable Double bank1Spread,
            @Nullable Double bank2Percent,
            @Nullable Double bank2Spread,
            long firstRow,
            long lastRow) {
        /** Of the bank that is the farther from zero, with its sign. */
        public double worstPercent() {
            return Stream.of(bank1Percent == null ? 0.0 : bank1Percent, bank2Percent == null ? 0.0 : bank2Percent)
                    .reduce(0.0, (one, other) -> Math.abs(other) > Math.abs(one) ? other : one);
        }
    }
}
