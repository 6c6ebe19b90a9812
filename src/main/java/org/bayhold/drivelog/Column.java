package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * A column of the file, or a name in a file of readings, and what is made of it.
 *
 * @param name as it stands in the file
 * @param parameter null where none was recognised
 * @param unit in which it is read; null where it is not used
 * @param unitText a unit that the file names and that is none of the parameter's
 */
public record Column(
        String name,
        @Nullable Parameter parameter,
        @Nullable Unit unit,
        UnitFrom unitFrom,
        @Nullable String unitText,
        Use use) {
    /** Where the unit comes from. */
    public enum UnitFrom {
        MAPPING,
        HEADING,
        UNIT_ROW,
        /** The file does not say; the usual one is taken. */
        ASSUMED,
        NONE
    }

    /** Whether it is read. */
    public enum Use {
        READ,
        NOT_RECOGNISED,
        UNKNOWN_UNIT,
        /** An earlier column already is this parameter. */
        REPEATED
    }

    boolean isRead() {
        return use == Use.READ;
    }

    static Column unknown(String name) {
        return new Column(name, null, null, UnitFrom.NONE, null, Use.NOT_RECOGNISED);
    }

    Column repeated() {
        return new Column(name, parameter, null, UnitFrom.NONE, null, Use.REPEATED);
    }

    /** With what the row of units says; a heading that says it goes before. */
    Column withUnitOf(String text) {
        if (parameter == null || unitFrom != UnitFrom.ASSUMED || text.isBlank()) {
            return this;
        }
        Unit said = Unit.of(parameter.dimension(), text);
        return said == null
                ? new Column(name, parameter, null, UnitFrom.NONE, text.strip(), Use.UNKNOWN_UNIT)
                : new Column(name, parameter, said, UnitFrom.UNIT_ROW, null, use);
    }
}
