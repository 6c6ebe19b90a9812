package org.bayhold.race;

import org.bayhold.support.FreshBayhold;

class RaceOnPostgresTest extends Race {
    @Override
    FreshBayhold.Store store() {
        return FreshBayhold.Store.postgres(RaceOnPostgresTest.class);
    }
}
