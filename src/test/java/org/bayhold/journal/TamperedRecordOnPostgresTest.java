package org.bayhold.journal;

import org.bayhold.support.FreshBayhold;

class TamperedRecordOnPostgresTest extends TamperedRecord {
    @Override
    FreshBayhold start() {
        return FreshBayhold.withoutCars(FreshBayhold.Store.postgres(TamperedRecordOnPostgresTest.class));
    }
}
