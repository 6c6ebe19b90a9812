package org.bayhold.buildsheet;

import java.util.List;
import java.util.UUID;
import org.bayhold.drivelog.Finding;
import org.bayhold.drivelog.Missing;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Unit;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.Personal;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * A recorded drive was judged, for the first time or again. The file and the whole judgement are kept apart; their hashes
 * stand here. {@code docs/drive-log.md, D17}.
 *
 * @param again the record of the first judgement, where this is another one of the same drive
 * @param fileSha256 of the file as it was uploaded
 * @param fileBytes as long as it was
 * @param calibrationId what was in the ECU; null where that was none of the shop's revisions
 * @param map of the calibration; null where it has no names for its maps
 * @param missing what keeps it from passing
 * @param risk the worst of the findings
 * @param headroomPercent what is left of the authority of the trims; null where nobody can tell
 * @param columns what was said of columns, beyond what is recognised
 * @param sampleSeconds between two rows of a file without a time
 * @param judgementSha256 of the whole judgement, as it is kept
 */
public record DriveLogged(
        Stamp stamp,
        @Nullable UUID again,
        String fileSha256,
        long fileBytes,
        @Nullable UUID calibrationId,
        @Nullable String map,
        Verdict verdict,
        List<Missing> missing,
        List<Found> findings,
        Risk risk,
        @Nullable FitFigures fit,
        @Nullable Double headroomPercent,
        @Nullable Venue venue,
        List<ColumnSaid> columns,
        @Nullable Double sampleSeconds,
        String judgementSha256,
        Fact.Source source,
        @Nullable Personal performedBy,
        @Nullable Personal note)
        implements Fact {
    public DriveLogged {
        missing = List.copyOf(missing);
        findings = List.copyOf(findings);
        columns = List.copyOf(columns);
    }

    /** A finding, without its numbers. */
    public record Found(Finding.Code code, Risk risk) {}

    /** The error over the airflow; percent and grams a second, each with its standard error. */
    public record FitFigures(
            double scalePercent, double scaleStandardError, double offsetGPerS, double offsetStandardError) {}

    /**
     * What a column was said to hold.
     *
     * @param name its heading
     * @param parameter null where it is not to be read
     * @param unit null where the file says it, or where it is the usual one
     */
    public record ColumnSaid(
            String name,
            @Nullable Parameter parameter,
            @Nullable Unit unit) {}

    /** Where it was driven. */
    public enum Venue {
        ROAD,
        TRACK,
        DYNO
    }

    /** The record by which the drive is known, however often it was judged. */
    public UUID drive() {
        return again == null ? stamp.id() : again;
    }

    @Override
    public void tell(Listener listener) {
        listener.driveLogged(this);
    }
}
