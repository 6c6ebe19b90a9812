package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Part changes as typed: several at once, with what they have in common. */
record InstallForm(
        @Nullable String when,
        @Nullable String order,
        @Nullable String odometerKm,
        @Nullable String source,
        @Nullable String performedBy,
        @Nullable List<Line> lines) {
    static final InstallForm EMPTY = new InstallForm(null, null, null, null, null, List.of(Line.EMPTY));

    /**
     * One part change as typed.
     *
     * @param part what the catalogue may know it by, or any words
     * @param chosen the part that was chosen where the words fit several, or {@link #NOT_IN_CATALOGUE}
     * @param place a category, or a category and a position
     */
    record Line(
            @Nullable String action,
            @Nullable String part,
            @Nullable String chosen,
            @Nullable String place,
            @Nullable String position,
            @Nullable String serial,
            @Nullable String ecuHardware,
            @Nullable String note) {
        static final String NOT_IN_CATALOGUE = "none";
        static final Line EMPTY = new Line(null, null, null, null, null, null, null, null);

        boolean isEmpty() {
            return isBlank(part) && isBlank(place) && isBlank(note) && isBlank(serial) && isBlank(ecuHardware);
        }

        private static boolean isBlank(@Nullable String text) {
            return text == null || text.isBlank();
        }
    }

    List<Line> typedLines() {
        return lines == null || lines.isEmpty() ? List.of(Line.EMPTY) : lines;
    }

    /** The page's lines and the recorded facts are counted alike; a form with nothing in it keeps its first line. */
    InstallForm withoutEmptyLines() {
        return with(typedLines().stream().filter(line -> !line.isEmpty()).toList());
    }

    InstallForm withOneMore() {
        List<Line> more = new ArrayList<>(typedLines());
        more.add(Line.EMPTY);
        return with(more);
    }

    private InstallForm with(List<Line> others) {
        return new InstallForm(when, order, odometerKm, source, performedBy, others);
    }
}
