package org.bayhold.drivelog;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How a file is to be read. {@code docs/drive-log.md, D1 to D5}.
 *
 * @param columns the site's own mapping, by the heading as it stands in the file; goes before what is recognised
 * @param sampleSeconds between two rows, where the file has no time; null where it has one
 * @param maxBytes the largest file that is read
 */
public record ReadRequest(
        Map<String, MappedColumn> columns, @Nullable Double sampleSeconds, long maxBytes) {
    /** 2 GiB. */
    public static final long USUAL_LIMIT = 1L << 31;

    /** A file that says all by itself. */
    public static final ReadRequest PLAIN = new ReadRequest(Map.of(), null, USUAL_LIMIT);

    private static final double LONGEST_SAMPLE = 60;

    public ReadRequest {
        columns = Map.copyOf(columns);
        if (sampleSeconds != null && !(sampleSeconds > 0 && sampleSeconds <= LONGEST_SAMPLE)) {
            throw new IllegalArgumentException("sampleSeconds must be above 0 and at most 60");
        }
        if (maxBytes <= 0) {
            throw new IllegalArgumentException("maxBytes must be above 0");
        }
    }

    public ReadRequest withColumns(Map<String, MappedColumn> mapping) {
        return new ReadRequest(mapping, sampleSeconds, maxBytes);
    }

    public ReadRequest withSampleSeconds(double seconds) {
        return new ReadRequest(columns, seconds, maxBytes);
    }

    public ReadRequest withMaxBytes(long bytes) {
        return new ReadRequest(columns, sampleSeconds, bytes);
    }
}
