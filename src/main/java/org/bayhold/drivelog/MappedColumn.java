package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/**
 * What a site says that a column holds.
 *
 * @param parameter null where it is not to be read, whatever its heading looks like
 * @param unit null where the heading says it, or where it is the usual one
 */
public record MappedColumn(
        @Nullable Parameter parameter, @Nullable Unit unit) {
    public MappedColumn {
        if (unit != null && (parameter == null || !unit.fits(parameter))) {
            throw new IllegalArgumentException(unit + " is no unit of " + parameter);
        }
    }
}
