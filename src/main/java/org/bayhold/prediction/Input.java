package org.bayhold.prediction;

import java.util.Map;

/** A number that went into a step, and where it is from. */
public record Input(String name, double value, Origin origin) {
    /** By the end of the name, or by all of it; no end is the end of another. */
    private static final Map<String, String> UNITS = Map.of(
            "KgPerLitre", "kg/l",
            "CcPerMin", "cc/min",
            "GPerS", "g/s",
            "Percent", "%",
            "Kpa", "kPa",
            "kpaAtZeroVolts", "kPa",
            "kpaPerVolt", "kPa/V",
            "Mm", "mm",
            "Ms", "ms");

    /** Where a number is from. */
    public enum Origin {
        /** The part on the car. */
        FITTED,
        /** The part for which the calibration was written. */
        CALIBRATED_FOR,
        /** What the revision assumes. */
        ASSUMED,
        /** What is taken where the revision says nothing. */
        DEFAULT,
        /** The car's own record. */
        CAR,
        /** A constant of {@code docs/prediction.md}. */
        CONSTANT,
        /** An earlier step. */
        COMPUTED
    }

    /** The unit, which stands in the name; empty where the figure is a ratio or a count. */
    public String unit() {
        String plain = name.replaceFirst("_(inst|cal)$", "");
        return UNITS.entrySet().stream()
                .filter(unit -> plain.endsWith(unit.getKey()) || plain.equals(unit.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    static Input fitted(String name, double value) {
        return new Input(name, value, Origin.FITTED);
    }

    static Input calibrated(String name, double value) {
        return new Input(name, value, Origin.CALIBRATED_FOR);
    }

    static Input constant(String name, double value) {
        return new Input(name, value, Origin.CONSTANT);
    }

    static Input computed(String name, double value) {
        return new Input(name, value, Origin.COMPUTED);
    }
}
