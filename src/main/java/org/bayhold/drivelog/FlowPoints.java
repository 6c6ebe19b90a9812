package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;

/**
 * Segments gathered into points of the error against the flow, in a room that does not grow with the file: cells of
 * airflow, in each of them batches of neighbouring segments, and where a cell is full, pairs of neighbouring batches
 * become one. A batch is long beside the swing of a closed loop, so that batches are nearly independent. {@code
 * docs/drive-log.md, D10}.
 */
final class FlowPoints {
    private static final int CELLS = 40;
    private static final double LEAST_FLOW = 0.5;
    private static final double CELL_RATIO = 1.25;
    private static final int BATCHES = 64;
    private static final double BATCH_SECONDS = 8;
    /** Batches with no more between them belong to one stretch of driving, and resemble each other. */
    private static final double NEIGHBOUR_SECONDS = 10;

    private final Cell[] cells = new Cell[CELLS];
    private AirSource source = AirSource.NONE;

    FlowPoints() {
        clear();
    }

    private void clear() {
        for (int i = 0; i < CELLS; i++) {
            cells[i] = new Cell();
        }
    }

    /** Sums over time. */
    private record Batch(
            double seconds,
            double flow,
            double inverseFlow,
            double trim,
            double beginSeconds,
            double endSeconds,
            long firstRow,
            long lastRow) {
        static final Batch NOTHING = new Batch(0, 0, 0, 0, 0, 0, 0, 0);

        static Batch of(Segment segment) {
            double by = segment.seconds();
            return new Batch(
                    by,
                    segment.flow() * by,
                    segment.inverseFlow() * by,
                    segment.trim() * by,
                    segment.endSeconds() - by,
                    segment.endSeconds(),
                    segment.firstRow(),
                    segment.lastRow());
        }

        Batch and(Batch later) {
            return new Batch(
                    seconds + later.seconds,
                    flow + later.flow,
                    inverseFlow + later.inverseFlow,
                    trim + later.trim,
                    beginSeconds,
                    later.endSeconds,
                    firstRow,
                    later.lastRow);
        }
    }

    private static final class Cell {
        private final List<Batch> full = new ArrayList<>();
        private Batch growing = Batch.NOTHING;
        private double target = BATCH_SECONDS;

        void add(Segment segment) {
            Batch batch = Batch.of(segment);
            growing = growing.seconds() == 0 ? batch : growing.and(batch);
            if (growing.seconds() >= target) {
                full.add(growing);
                growing = Batch.NOTHING;
                if (full.size() == BATCHES) {
                    halve();
                }
            }
        }

        private void halve() {
            for (int i = 0; i < BATCHES / 2; i++) {
                full.set(i, full.get(2 * i).and(full.get(2 * i + 1)));
            }
            full.subList(BATCHES / 2, BATCHES).clear();
            target *= 2;
        }

        List<Batch> all() {
            List<Batch> all = new ArrayList<>(full);
            if (growing.seconds() > 0) {
                all.add(growing);
            }
            return all;
        }
    }

    /** A flow that is known better than what came before begins anew: two kinds of flow are not mixed. */
    void add(Segment segment) {
        if (segment.source() == AirSource.NONE || !(segment.flow() > 0)) {
            return;
        }
        if (segment.source().compareTo(source) > 0) {
            source = segment.source();
            clear();
        }
        if (segment.source() == source) {
            cells[cell(segment.flow())].add(segment);
        }
    }

    private static int cell(double flow) {
        double steps = Math.log(flow / LEAST_FLOW) / Math.log(CELL_RATIO);
        return (int) Math.max(0, Math.min(CELLS - 1, Math.floor(steps)));
    }

    AirSource source() {
        return source;
    }

    /**
     * A point of the picture and of the fit.
     *
     * @param follows whether it goes on where the point before it ended
     */
    record Point(
            double seconds,
            double flow,
            double inverseFlow,
            double trim,
            boolean follows,
            long firstRow,
            long lastRow) {}

    /** By cells of rising flow, in each by time. */
    List<Point> points() {
        List<Point> points = new ArrayList<>();
        for (Cell cell : cells) {
            double before = Double.NaN;
            for (Batch batch : cell.all()) {
                double by = batch.seconds();
                points.add(new Point(
                        by,
                        batch.flow() / by,
                        batch.inverseFlow() / by,
                        batch.trim() / by,
                        batch.beginSeconds() - before < NEIGHBOUR_SECONDS,
                        batch.firstRow(),
                        batch.lastRow()));
                before = batch.endSeconds();
            }
        }
        return points;
    }
}
