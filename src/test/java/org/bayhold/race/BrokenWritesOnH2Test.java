package org.bayhold.race;

import org.bayhold.support.FreshBayhold;

class BrokenWritesOnH2Test extends BrokenWrites {
    @Override
    FreshBayhold.Store store() {
        return FreshBayhold.Store.h2();
    }
}
