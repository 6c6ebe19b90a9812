package org.bayhold.buildsheet;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An inspection as typed.
 *
 * @param restFactory set where every place without an answer was found with its factory part
 */
record InspectForm(
        @Nullable String when,
        @Nullable String order,
        @Nullable String odometerKm,
        @Nullable String note,
        @Nullable String restFactory,
        @Nullable List<Line> lines) {

    /**
     * What was found at one place.
     *
     * @param place a category, or a category and a position
     * @param found empty where nobody looked
     */
    record Line(
            @Nullable String place,
            @Nullable String found,
            @Nullable String part) {}

    List<Line> typedLines() {
        return lines == null ? List.of() : lines;
    }
}
