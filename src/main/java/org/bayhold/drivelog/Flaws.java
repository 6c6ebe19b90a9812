package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.drivelog.Flaw.Kind;
import org.jspecify.annotations.Nullable;

/** Counts what is wrong with a file. {@code docs/drive-log.md, D6}. */
final class Flaws {
    private static final int KINDS = Kind.values().length;
    private static final int OF_ROWS = Parameter.COUNT;

    private final long[] counts = new long[KINDS * (Parameter.COUNT + 1)];
    private final double[] seconds = new double[counts.length];
    private final long[] firstRows = new long[counts.length];

    void count(Kind kind, long row) {
        count(kind, OF_ROWS, 1, 0, row);
    }

    void count(Kind kind, int parameter, long row) {
        count(kind, parameter, 1, 0, row);
    }

    void lasts(Kind kind, @Nullable Parameter parameter, long more, double lasted, long row) {
        count(kind, parameter == null ? OF_ROWS : parameter.index(), more, lasted, row);
    }

    private void count(Kind kind, int of, long more, double lasted, long row) {
        int at = at(kind, of);
        if (counts[at] == 0) {
            firstRows[at] = row;
        }
        counts[at] += more;
        seconds[at] += lasted;
    }

    @SuppressWarnings("EnumOrdinal") // a place in an array, within one run
    private static int at(Kind kind, int of) {
        return kind.ordinal() * (OF_ROWS + 1) + of;
    }

    List<Flaw> all() {
        List<Flaw> all = new ArrayList<>();
        Parameter[] parameters = Parameter.values();
        for (Kind kind : Kind.values()) {
            for (int of = 0; of <= OF_ROWS; of++) {
                int at = at(kind, of);
                if (counts[at] > 0) {
                    Parameter parameter = of == OF_ROWS ? null : parameters[of];
                    all.add(new Flaw(kind, parameter, counts[at], seconds[at], firstRows[at]));
                }
            }
        }
        return all;
    }
}
