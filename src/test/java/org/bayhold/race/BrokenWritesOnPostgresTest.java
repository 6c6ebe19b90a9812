package org.bayhold.race;

import org.bayhold.support.FreshBayhold;

class BrokenWritesOnPostgresTest extends BrokenWrites {
    @Override
    FreshBayhold.Store store() {
        return FreshBayhold.Store.postgres(BrokenWritesOnPostgresTest.class);
    }
}
