package org.bayhold.support;

/** For the tests that run on H2. */
public interface OnH2 extends OnADatabase {
    @Override
    default RunningBayhold running() {
        return RunningBayhold.onH2();
    }
}
