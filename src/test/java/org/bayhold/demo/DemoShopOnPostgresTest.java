package org.bayhold.demo;

import org.bayhold.support.FreshBayhold;

/** Here two servers start at once on the one empty database. */
class DemoShopOnPostgresTest extends DemoShopContract {
    private static final FreshBayhold.Store STORE = FreshBayhold.Store.postgres(DemoShopOnPostgresTest.class);

    @Override
    FreshBayhold.Store store() {
        return STORE;
    }

    @Override
    FreshBayhold begin() throws Exception {
        return atOnce(STORE, 2);
    }
}
