package org.bayhold.support;

import org.junit.jupiter.api.extension.ExtendWith;

/** A contract test holds for every database; a class of its own for each says which. */
@ExtendWith(TheRecordStaysIntact.class)
public interface OnADatabase {
    RunningBayhold running();

    default Shop shop() {
        return running().shop();
    }
}
