package org.bayhold.journal;

import java.nio.file.Path;
import org.bayhold.support.RunningBayhold;
import org.junit.jupiter.api.io.TempDir;

class TamperedRecordOnH2Test extends TamperedRecord {
    @TempDir
    static Path folder;

    @Override
    RunningBayhold start() {
        return RunningBayhold.startedOn(RunningBayhold.h2In(folder));
    }
}
