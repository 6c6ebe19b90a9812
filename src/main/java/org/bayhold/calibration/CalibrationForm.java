package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A revision as typed. */
record CalibrationForm(
        @Nullable String name,
        @Nullable String revision,
        @Nullable String ecuHardware,
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        @Nullable String purpose,
        @Nullable String limits,
        @Nullable String boostTargetKpa,
        @Nullable String note,
        @Nullable List<Line> lines) {

    /**
     * A line of coverage as typed.
     *
     * @param parts names of parts that are equal to the calibration, each on a line of its own
     */
    record Line(
            @Nullable String category,
            @Nullable String position,
            @Nullable String parts,
            @Nullable String factoryAllowed,
            @Nullable String noneAllowed) {
        static final Line EMPTY = new Line(null, null, null, null, null);

        boolean isEmpty() {
            return isBlank(category) && isBlank(position) && isBlank(parts);
        }

        private static boolean isBlank(@Nullable String text) {
            return text == null || text.isBlank();
        }
    }

    List<Line> typedLines() {
        return lines == null ? List.of() : lines;
    }

    List<Line> shownLines() {
        return typedLines().isEmpty() ? List.of(Line.EMPTY) : typedLines();
    }

    /** The page's lines and the request's are counted alike. */
    CalibrationForm withoutEmptyLines() {
        return with(typedLines().stream().filter(line -> !line.isEmpty()).toList());
    }

    CalibrationForm withOneMore() {
        List<Line> more = new ArrayList<>(shownLines());
        more.add(Line.EMPTY);
        return with(more);
    }

    private CalibrationForm with(List<Line> others) {
        return new CalibrationForm(
                name, revision, ecuHardware, calid, cvn, fileSha256, purpose, limits, boostTargetKpa, note, others);
    }
}
