package org.bayhold.support;

/** A contract test holds for every database; a class of its own for each says which. */
public interface OnADatabase {
    RunningBayhold running();

    default Shop shop() {
        return running().shop();
    }
}
