package org.bayhold.journal;

import java.nio.file.Path;
import org.bayhold.support.FreshBayhold;
import org.junit.jupiter.api.io.TempDir;

class TamperedRecordOnH2Test extends TamperedRecord {
    @TempDir
    static Path folder;

    @Override
    FreshBayhold start() {
        return FreshBayhold.withoutCars(FreshBayhold.Store.h2In(folder));
    }
}
