package org.bayhold.drives;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.drivelog.Fit;
import org.bayhold.drivelog.Judgement;
import org.bayhold.journal.Text;
import org.jspecify.annotations.Nullable;

/**
 * A file that was judged, before it is on record.
 *
 * @param calibrationId against which it was judged; null where none of the shop's was in the ECU
 * @param map of that calibration
 * @param written the judgement as it will be kept
 * @param said of its columns
 * @param sampleSeconds between two rows of a file without a time
 */
record JudgedFile(
        String sha256,
        @Nullable UUID calibrationId,
        @Nullable String map,
        Judged judged,
        Judgements.Written written,
        List<ColumnSaid> said,
        @Nullable Double sampleSeconds) {
    JudgedFile {
        said = List.copyOf(said);
    }

    /**
     * As a fact of its car.
     *
     * @param last the judgement before, whose drive this is; what the request leaves out of the drive is as it was
     */
    DriveLogged fact(OpenCar car, Instant at, DriveLogRequest request, @Nullable DriveLogged last) {
        Judgement judgement = judged.judgement();
        String driver = Text.strip(request.performedBy());
        String note = Text.strip(request.note());
        return new DriveLogged(
                car.stamp(at),
                last == null ? null : last.drive(),
                sha256,
                judgement.quality().bytes(),
                calibrationId,
                map,
                judgement.verdict(),
                judgement.missing(),
                judgement.findings().stream()
                        .map(finding -> new DriveLogged.Found(finding.code(), finding.risk()))
                        .toList(),
                judgement.risk(),
                figures(judgement.fit()),
                judgement.headroomPercent(),
                request.venue() == null && last != null ? last.venue() : request.venue(),
                said,
                sampleSeconds,
                written.sha256(),
                Objects.requireNonNullElse(request.source(), Fact.Source.SHOP),
                driver == null && last != null
                        ? last.performedBy()
                        : car.chain().keep(driver),
                note == null && last != null ? last.note() : car.chain().keep(note));
    }

    private static DriveLogged.@Nullable FitFigures figures(@Nullable Fit fit) {
        return fit == null
                ? null
                : new DriveLogged.FitFigures(
                        fit.scalePercent(), fit.scaleStandardError(), fit.offsetGPerS(), fit.offsetStandardError());
    }
}
