package org.bayhold.drives;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.function.LongConsumer;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.drivelog.DriveLogs;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Preview;
import org.bayhold.drivelog.ReadRequest;
import org.bayhold.drivelog.RefusedLogException;
import org.bayhold.drives.EngineOnRecord.Driven;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads files that were received, with what the shop knows of their columns. */
@Component
class LogReading {
    private final LogFiles files;
    private final ColumnMeanings meanings;
    private final LogSettings settings;

    LogReading(LogFiles files, ColumnMeanings meanings, LogSettings settings) {
        this.files = files;
        this.meanings = meanings;
        this.settings = settings;
    }

    /**
     * The beginning of a file, and what is made of its columns so far.
     *
     * @throws Refusal INVALID of the field {@code file} where it is no table; NOT_FOUND where it waits no longer
     */
    Preview preview(String sha256) {
        ReadRequest request = request(List.of(), null);
        return read(sha256, in -> DriveLogs.preview(in, request));
    }

    /**
     * What the whole file shows of an engine.
     *
     * @param progress is told the bytes of the file that are judged so far
     * @throws Refusal as {@link #preview}, and INVALID where it cannot be read as was said
     */
    Judgement judge(String sha256, DriveLogRequest said, Driven driven, LongConsumer progress) {
        ReadRequest request = request(said.columns(), said.sampleSeconds());
        return read(sha256, in -> DriveLogs.judge(in, request, driven.engine(), driven.thresholds(), progress));
    }

    private ReadRequest request(List<ColumnSaid> columns, @Nullable Double sampleSeconds) {
        return new ReadRequest(
                meanings.with(columns), sampleSeconds, settings.largest().toBytes());
    }

    private interface Pass<T> {
        T over(InputStream in) throws IOException, RefusedLogException;
    }

    private <T> T read(String sha256, Pass<T> pass) {
        try (InputStream in = files.open(sha256)) {
            return pass.over(in);
        } catch (RefusedLogException refused) {
            throw Refusal.invalid("file", "drivelog.refused." + refused.reason().name(), refused.row());
        } catch (IOException failed) {
            throw Refusal.of(Code.UNAVAILABLE, "drive-log.files-unavailable");
        }
    }
}
