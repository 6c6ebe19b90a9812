package org.bayhold.gate;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How one number of a prediction came about, in words.
 *
 * @param name of the number
 * @param how the formula in words
 * @param formula as {@code docs/prediction.md} writes it
 * @param rule the paragraph there
 */
record TraceLine(
        String name, String value, String how, String formula, List<Entry> inputs, String rule, String source) {
    /**
     * What went into it.
     *
     * @param code the name that the formula uses
     */
    record Entry(String name, String code, String value, String origin) {}

    /**
     * The numbers of one part.
     *
     * @param place null for the car as a whole
     */
    record Group(@Nullable String place, List<TraceLine> lines) {}
}
