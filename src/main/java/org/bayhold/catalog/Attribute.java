package org.bayhold.catalog;

import java.util.Optional;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;

/**
 * One thing that a shop may record of a part, that a calibration may assume, or that policy may set: its name, with the
 * unit in it, and what its value may be. The same definition refuses a wrong value, reads a right one, and names both to
 * people; its meaning is a sentence of the bundle, {@code attribute.NAME} for parts and calibrations.
 */
public sealed interface Attribute
        permits NumberAttribute, FlagAttribute, ChoiceAttribute, TextAttribute, CurveAttribute {
    /** What a value is, whatever it is of. */
    enum Kind {
        NUMBER,
        FLAG,
        CHOICE,
        TEXT,
        CURVE
    }

    String name();

    Kind kind();

    /** What a value may be, for people and without the name: {@code 20 mm … 200 mm}. */
    String allowed();

    /** A recorded value as somebody reads it; one that would be refused today as it is. */
    default String show(Object value, Units units) {
        return String.valueOf(value);
    }

    /**
     * Why a value is refused; empty where it is taken.
     *
     * @param field where it stands in the request, as a JSON path
     */
    Optional<Refusal.Reason> problem(String field, Object value);
}
