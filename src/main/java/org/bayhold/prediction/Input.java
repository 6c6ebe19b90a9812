package org.bayhold.prediction;

/** A number that went into a step, and where it is from. */
public record Input(String name, double value, Origin origin) {
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
