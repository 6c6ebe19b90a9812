package org.bayhold.drives;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.buildsheet.DriveLogged.FitFigures;
import org.bayhold.buildsheet.DriveLogged.Venue;
import org.bayhold.buildsheet.Fact;
import org.bayhold.drivelog.Finding;
import org.bayhold.drivelog.Missing;
import org.bayhold.drivelog.Rows;
import org.bayhold.drivelog.Unjudged;
import org.bayhold.drivelog.Verdict;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * A judged drive.
 *
 * @param again the record of its first judgement, where this is another one
 * @param missing what keeps it from passing
 * @param stillToDrive the same in words
 * @param unjudged what could not be looked at, without any bearing on the verdict
 * @param fit null where the airflow is not known, or was nearly the same all the time
 * @param headroomPercent what is left of the authority at the largest steady correction; null where there is none
 */
record DriveLogView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        @Nullable UUID again,
        String fileSha256,
        long fileBytes,
        @Nullable UUID calibrationId,
        @Nullable String map,
        Verdict verdict,
        List<Missing.Code> missing,
        List<String> stillToDrive,
        Risk risk,
        List<FindingView> findings,
        List<Unjudged> unjudged,
        @Nullable FitFigures fit,
        @Nullable Double headroomPercent,
        @Nullable Venue venue,
        List<ColumnSaid> columns,
        @Nullable Double sampleSeconds,
        Fact.Source source,
        @Nullable String performedBy,
        @Nullable String note,
        @Nullable UUID retuneItemId,
        List<String> warnings) {
    /** The same file was on record for this car, read in the same way: it was not judged once more. */
    static final String ON_RECORD = "FILE_ON_RECORD";

    static final String ON_ANOTHER_CAR = "FILE_ON_ANOTHER_CAR";

    /**
     * Something that the drive shows.
     *
     * @param numbers by name, each name with its unit
     * @param rows the lines of the file that it rests on, the weightiest first; of many some
     */
    record FindingView(Finding.Code code, Risk risk, String sentence, Map<String, Double> numbers, List<Rows> rows) {}

    boolean isOnRecordAlready() {
        return warnings.contains(ON_RECORD);
    }
}
