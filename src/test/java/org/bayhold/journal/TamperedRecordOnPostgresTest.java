package org.bayhold.journal;

import org.bayhold.support.AnyPostgres;
import org.bayhold.support.RunningBayhold;

class TamperedRecordOnPostgresTest extends TamperedRecord {
    @Override
    RunningBayhold start() {
        return RunningBayhold.startedOn(AnyPostgres.freshDatabase(TamperedRecordOnPostgresTest.class));
    }
}
