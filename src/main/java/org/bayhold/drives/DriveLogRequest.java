package org.bayhold.drives;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.buildsheet.DriveLogged.Venue;
import org.bayhold.buildsheet.Fact;
import org.bayhold.journal.Storable;
import org.jspecify.annotations.Nullable;

/**
 * A drive to be judged, beside its file.
 *
 * @param columns what columns hold, where that is not recognised
 * @param sampleSeconds between two rows of a file without a time
 * @param map of the calibration that was driven; may be left out where it has one only
 * @param effectiveAt when the drive ended; null for now
 * @param performedBy who drove
 */
record DriveLogRequest(
        @NotNull @Size(max = 200) List<@Valid @NotNull ColumnSaid> columns,
        @Nullable @DecimalMin("0.0001") @DecimalMax("60") Double sampleSeconds,
        @Nullable @Size(max = 60) @Storable String map,
        @Nullable Venue venue,
        @Nullable Instant effectiveAt,
        Fact.@Nullable Source source,
        @Nullable @Size(max = 200) @Storable String performedBy,
        @Nullable @Size(max = 2000) @Storable String note) {
    DriveLogRequest {
        columns = List.copyOf(columns);
    }

    /**
     * To be judged again; what is null is read as it was before.
     *
     * @param columns all that was said of columns
     */
    static DriveLogRequest again(
            DriveLogged before,
            @Nullable List<ColumnSaid> columns,
            @Nullable Double sampleSeconds,
            @Nullable String map) {
        return new DriveLogRequest(
                columns == null ? before.columns() : columns,
                sampleSeconds == null ? before.sampleSeconds() : sampleSeconds,
                map == null ? before.map() : map,
                null,
                null,
                before.source(),
                null,
                null);
    }
}
