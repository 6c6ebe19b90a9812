package org.bayhold.drives;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.bayhold.drivelog.TrimMap.Cell;
import org.bayhold.page.Plot.Tick;

/** One side of the trim map: equal cells beside each other. Pure. */
record MapSide(double from, double step, int count) {
    static MapSide of(List<Cell> cells, ToDoubleFunction<Cell> from, ToDoubleFunction<Cell> to) {
        double least = cells.stream().mapToDouble(from).min().orElseThrow();
        double most = cells.stream().mapToDouble(to).max().orElseThrow();
        double step = to.applyAsDouble(cells.get(0)) - from.applyAsDouble(cells.get(0));
        return new MapSide(least, step, (int) Math.round((most - least) / step));
    }

    double place(double figure) {
        return (figure - from) / step;
    }

    /** Every edge, or every so manieth, that no figure lies over another. */
    List<Tick> ticks(
            DoubleFunction<String> text, DoubleFunction<Double> at, double size, ToDoubleFunction<String> room) {
        List<String> texts = new ArrayList<>();
        for (int edge = 0; edge <= count; edge++) {
            texts.add(text.apply(from + edge * step));
        }
        double widest = texts.stream().mapToDouble(room).max().orElseThrow();
        int every = (int) Math.max(1, Math.ceil(widest / size));
        List<Tick> ticks = new ArrayList<>();
        for (int edge = 0; edge <= count; edge += every) {
            ticks.add(new Tick(at.apply(edge), texts.get(edge)));
        }
        return ticks;
    }
}
