package org.bayhold.prediction;

import java.util.List;

/**
 * A sentence of the bundle with what it names: numbers rounded for reading, amounts, names of attributes, and categories,
 * which are shown by their labels.
 */
public record Sentence(String key, List<Object> arguments) {
    public Sentence {
        arguments = List.copyOf(arguments);
    }

    static Sentence of(String key, Object... arguments) {
        return new Sentence(key, List.of(arguments));
    }

    /** A figure as a sentence shows it. */
    static double shown(double figure, int decimals) {
        double scale = Math.pow(10, decimals);
        double scaled = figure * scale;
        return Math.abs(scaled) < 1e15 ? Math.rint(scaled) / scale + 0.0 : figure;
    }
}
