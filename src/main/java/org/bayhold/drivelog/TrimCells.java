package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Total trim over engine speed and load. {@code docs/drive-log.md, D9}. */
final class TrimCells {
    private static final double SPEED_STEP = 500;
    private static final int SPEEDS = 33;
    private static final int LOADS = 64;

    private final Cell[] cells = new Cell[SPEEDS * LOADS];

    private static final class Cell {
        private final Bank bank1 = new Bank();
        private final Bank bank2 = new Bank();
        private double seconds;
        private long firstRow;
        private long lastRow;
    }

    private static final class Bank {
        private double seconds;
        private double sum;
        private double squares;

        void add(Segment.Trim trim, double by) {
            if (trim.isKnown()) {
                seconds += by;
                sum += trim.mean() * by;
                squares += trim.meanSquare() * by;
            }
        }

        @Nullable Double mean() {
            return seconds > 0 ? sum / seconds : null;
        }

        @Nullable Double spread() {
            return seconds > 0 ? Math.sqrt(Math.max(0, squares / seconds - sum / seconds * (sum / seconds))) : null;
        }
    }

    void add(Segment segment, LoadAxis axis) {
        int speed = (int) Math.max(0, Math.min(SPEEDS - 1, segment.rpm() / SPEED_STEP));
        int load = (int) Math.max(0, Math.min(LOADS - 1, segment.load() / axis.step()));
        int at = speed * LOADS + load;
        Cell cell = cells[at] == null ? new Cell() : cells[at];
        cells[at] = cell;
        cell.firstRow = cell.seconds == 0 ? segment.firstRow() : cell.firstRow;
        cell.lastRow = segment.lastRow();
        cell.seconds += segment.seconds();
        cell.bank1.add(segment.bank1(), segment.seconds());
        cell.bank2.add(segment.bank2(), segment.seconds());
    }

    /** By rising speed, then by rising load. */
    List<TrimMap.Cell> all(LoadAxis axis) {
        List<TrimMap.Cell> all = new ArrayList<>();
        for (int at = 0; at < cells.length; at++) {
            Cell cell = cells[at];
            if (cell != null) {
                double speed = SPEED_STEP * Math.floorDiv(at, LOADS);
                double load = axis.step() * Math.floorMod(at, LOADS);
                all.add(new TrimMap.Cell(
                        speed,
                        speed + SPEED_STEP,
                        load,
                        load + axis.step(),
                        cell.seconds,
                        cell.bank1.mean(),
                        cell.bank1.spread(),
                        cell.bank2.mean(),
                        cell.bank2.spread(),
                        cell.firstRow,
                        cell.lastRow));
            }
        }
        return all;
    }
}
