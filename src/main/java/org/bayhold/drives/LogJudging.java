package org.bayhold.drives;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.drivelog.Column;
import org.bayhold.drives.EngineOnRecord.Driven;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Judges files that were received against cars as they were driven. Puts nothing on record. */
@Component
class LogJudging {
    private final EngineOnRecord engines;
    private final ColumnMeanings meanings;
    private final LogReading reading;
    private final Judgements judgements;

    LogJudging(EngineOnRecord engines, ColumnMeanings meanings, LogReading reading, Judgements judgements) {
        this.engines = engines;
        this.meanings = meanings;
        this.reading = reading;
        this.judgements = judgements;
    }

    /**
     * @param effectiveAt when it was driven; null for now
     * @param progress is told the bytes of the file that are judged so far
     * @throws Refusal INVALID where the file is no log, or the request cannot be right
     */
    JudgedFile judge(
            UUID vehicleId,
            String sha256,
            @Nullable Instant effectiveAt,
            DriveLogRequest request,
            LongConsumer progress) {
        Driven driven = engines.driven(vehicleId, effectiveAt);
        if (!driven.sparkIgnition()) {
            throw Refusal.invalid("file", "drive-log.spark-only");
        }
        String map = driven.map(request.map());
        Judged judged =
                new Judged(driven.engine(), driven.thresholds(), reading.judge(sha256, request, driven, progress));
        return new JudgedFile(
                sha256,
                driven.calibrationId(),
                map,
                judged,
                judgements.written(judged),
                said(request, judged),
                request.sampleSeconds());
    }

    /** Of the columns that the file has, what was said: by the shop before, or with the file. It stays with the drive. */
    List<ColumnSaid> said(DriveLogRequest request, Judged judged) {
        return meanings.of(
                request.columns(),
                judged.judgement().quality().columns().stream()
                        .map(Column::name)
                        .toList());
    }
}
