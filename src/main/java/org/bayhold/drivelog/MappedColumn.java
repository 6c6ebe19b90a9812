package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * What a site says that a column holds.
 *
 * @param unit null where the heading says it, or where it is the usual one
 */
public record MappedColumn(Parameter parameter, @Nullable Unit unit) {
    public MappedColumn {
        if (unit != null && !unit.fits(parameter)) {
            throw new IllegalArgumentException(unit + " is no unit of " + parameter);
        }
    }
}
