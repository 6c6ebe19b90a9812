package org.bayhold.demo;

import org.bayhold.support.FreshBayhold;

class DemoShopOnH2Test extends DemoShopContract {
    @Override
    FreshBayhold.Store store() {
        return FreshBayhold.Store.h2();
    }
}
