package org.bayhold.drivelog;

import java.util.List;
import java.util.Set;

/**
 * How the file was read, and what is wrong with it. {@code docs/drive-log.md, D2 and D6}.
 *
 * @param moments that went into the judgement
 * @param seconds between them, without gaps
 * @param decimalMark a point or a comma
 * @param parameters that were read at least once
 * @param badSharePercent of time and moments that gaps, jumps of time and unusable values make up
 */
public record Quality(
        long bytes,
        long moments,
        double seconds,
        long firstRow,
        long lastRow,
        String encoding,
        char separator,
        char decimalMark,
        boolean isOneRowAReading,
        List<Column> columns,
        Set<Parameter> parameters,
        List<Flaw> flaws,
        double badSharePercent) {
    public Quality {
        columns = List.copyOf(columns);
        parameters = Set.copyOf(parameters);
        flaws = List.copyOf(flaws);
    }

    boolean has(Parameter parameter) {
        return parameters.contains(parameter);
    }
}
