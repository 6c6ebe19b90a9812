package org.bayhold.gate;

/** Whether something is asked for, on a page. */
enum Asked {
    YES,
    NO;

    static Asked of(boolean asked) {
        return asked ? YES : NO;
    }
}
