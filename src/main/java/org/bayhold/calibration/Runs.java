package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

/** Rows that stand together for one thing: neighbours with one number. */
final class Runs {
    private Runs() {}

    /** None of them is empty. */
    static <T> List<List<T>> of(List<T> rows, ToIntFunction<T> number) {
        List<List<T>> runs = new ArrayList<>();
        int from = 0;
        for (int to = 1; to <= rows.size(); to++) {
            if (to == rows.size() || number.applyAsInt(rows.get(to)) != number.applyAsInt(rows.get(from))) {
                runs.add(rows.subList(from, to));
                from = to;
            }
        }
        return runs;
    }
}
