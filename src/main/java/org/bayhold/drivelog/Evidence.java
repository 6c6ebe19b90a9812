package org.bayhold.drivelog;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/** All that the rules look at, and what is common to them. */
record Evidence(
        EngineFacts facts,
        Thresholds thresholds,
        Quality quality,
        Drive drive,
        List<TrimMap.Cell> cells,
        @Nullable Fit fit,
        Fitting.@Nullable Rise rise,
        List<Pull> pulls) {
    private static final int ROWS = 5;
    private static final double EXTREME_LEAN_PERCENT = 10;

    /** Cells that are long enough to be judged, the farthest from zero first. */
    List<TrimMap.Cell> judgedCells() {
        return cells.stream()
                .filter(cell -> cell.seconds() >= thresholds.cellSeconds())
                .sorted(Comparator.comparingDouble(cell -> -Math.abs(cell.worstPercent())))
                .toList();
    }

    /** As {@code docs/prediction.md, P17}: by what is asked of the ECU's authority, and by lean alone. */
    Risk ofTrim(double percent) {
        double used = Math.abs(percent) / facts.trimAuthorityPercent();
        if (used > 1 || percent >= EXTREME_LEAN_PERCENT) {
            return Risk.EXTREME;
        }
        return used > 0.5 ? Risk.HIGH : Risk.MODERATE;
    }

    /** Of the pulls that have the number, those beyond a limit, the worst first. */
    List<Pull> beyond(ToDoubleFunction<Pull> number, double limit) {
        return pulls.stream()
                .filter(pull -> number.applyAsDouble(pull) > limit)
                .sorted(Comparator.comparingDouble(pull -> -number.applyAsDouble(pull)))
                .toList();
    }

    static List<Rows> rows(List<Pull> pulls) {
        return pulls.stream()
                .limit(ROWS)
                .map(pull -> new Rows(pull.firstRow(), pull.lastRow()))
                .toList();
    }

    static List<Rows> rowsOf(List<TrimMap.Cell> cells) {
        return cells.stream()
                .limit(ROWS)
                .map(cell -> new Rows(cell.firstRow(), cell.lastRow()))
                .toList();
    }

    /** NaN where it is null, so that no comparison holds. */
    static double or(@Nullable Double value) {
        return value == null ? Double.NaN : value;
    }

    /** As a sentence shows it. */
    static double shown(double figure, int decimals) {
        double scale = Math.pow(10, decimals);
        return Math.rint(figure * scale) / scale + 0.0;
    }

    static double shown(double figure) {
        return shown(figure, 1);
    }

    /** Names and values in turn; values that are not known are left away. */
    static Map<String, Double> numbers(@Nullable Object... namesAndValues) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            if (namesAndValues[i + 1] instanceof Double value && Double.isFinite(value)) {
                numbers.put(String.valueOf(namesAndValues[i]), value);
            }
        }
        return numbers;
    }

    static Stream<Finding> none() {
        return Stream.empty();
    }
}
