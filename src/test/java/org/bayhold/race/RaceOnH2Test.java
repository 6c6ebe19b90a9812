package org.bayhold.race;

import org.bayhold.support.FreshBayhold;

class RaceOnH2Test extends Race {
    @Override
    FreshBayhold.Store store() {
        return FreshBayhold.Store.h2();
    }
}
