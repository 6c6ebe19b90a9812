package org.bayhold.drives;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.bayhold.drivelog.DriveLogs;
import org.bayhold.drivelog.Preview;
import org.bayhold.drivelog.ReadRequest;
import org.bayhold.drivelog.RefusedLogException;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;

/** The beginning of a file, and what is made of its columns so far. */
@Component
class Previewing {
    private final LogFiles files;
    private final ColumnMeanings meanings;
    private final LogSettings settings;

    Previewing(LogFiles files, ColumnMeanings meanings, LogSettings settings) {
        this.files = files;
        this.meanings = meanings;
        this.settings = settings;
    }

    /** @throws Refusal INVALID of the field {@code file} where it is no table; NOT_FOUND where it waits no longer */
    Preview of(String sha256) {
        ReadRequest request = new ReadRequest(
                meanings.with(List.of()), null, settings.largest().toBytes());
        try (InputStream in = files.open(sha256)) {
            return DriveLogs.preview(in, request);
        } catch (RefusedLogException refused) {
            throw Refusal.invalid("file", "drivelog.refused." + refused.reason().name(), refused.row());
        } catch (IOException failed) {
            throw Refusal.of(Code.UNAVAILABLE, "drive-log.files-unavailable");
        }
    }
}
