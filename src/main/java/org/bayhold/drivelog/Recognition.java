package org.bayhold.drivelog;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.bayhold.drivelog.Column.UnitFrom;
import org.bayhold.drivelog.Column.Use;
import org.jspecify.annotations.Nullable;

/** Headings into columns: the site's mapping first, then the names that everybody uses. {@code docs/drive-log.md, D3}. */
final class Recognition {
    private final Map<String, MappedColumn> mapping = new HashMap<>();

    Recognition(Map<String, MappedColumn> mapping) {
        mapping.forEach((name, column) -> this.mapping.put(key(name), column));
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    /** @param unitText of a column of its own, in a file of readings; empty where there is none */
    Column column(String name, String unitText) {
        MappedColumn mapped = mapping.get(key(name));
        Names.Named named = Names.of(name);
        if (mapped != null) {
            return mapped(name, mapped, named);
        }
        if (named == null) {
            return Column.unknown(name);
        }
        Parameter parameter = named.parameter();
        if (named.unitText() != null) {
            return new Column(name, parameter, null, UnitFrom.NONE, named.unitText(), Use.UNKNOWN_UNIT);
        }
        if (named.unit() != null) {
            return new Column(name, parameter, named.unit(), UnitFrom.HEADING, null, Use.READ);
        }
        return new Column(name, parameter, parameter.unit(), UnitFrom.ASSUMED, null, Use.READ).withUnitOf(unitText);
    }

    private static Column mapped(String name, MappedColumn mapped, Names.@Nullable Named named) {
        Parameter parameter = mapped.parameter();
        if (parameter == null) {
            return Column.unknown(name);
        }
        if (mapped.unit() != null) {
            return new Column(name, parameter, mapped.unit(), UnitFrom.MAPPING, null, Use.READ);
        }
        if (named != null && named.parameter() == parameter && named.unit() != null) {
            return new Column(name, parameter, named.unit(), UnitFrom.HEADING, null, Use.READ);
        }
        return new Column(name, parameter, parameter.unit(), UnitFrom.ASSUMED, null, Use.READ);
    }
}
