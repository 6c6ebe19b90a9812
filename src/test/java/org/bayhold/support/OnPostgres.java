package org.bayhold.support;

/** For the tests that run on PostgreSQL. */
public interface OnPostgres extends OnADatabase {
    @Override
    default RunningBayhold running() {
        return RunningBayhold.onPostgres();
    }
}
