package org.bayhold.journal;

import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;

/** What the template asks of a database, with one thing taken out. */
class BrokenDatabase extends Database {
    private final ThreadLocal<Instant> before = new ThreadLocal<>();
    private volatile Fault fault = Fault.NONE;

    BrokenDatabase(DataSource dataSource, JdbcClient jdbc, Clock clock, PlatformTransactionManager transactions)
            throws SQLException {
        super(dataSource, jdbc, clock, transactions);
    }

    void breakAt(Fault broken) {
        this.fault = broken;
    }

    void takeTimeAlready() {
        before.set(super.now());
    }

    @Override
    Instant now() {
        Instant taken = before.get();
        return fault == Fault.TIME_BEFORE_THE_LOCK && taken != null ? taken : super.now();
    }

    @Override
    void holdHeads(Collection<UUID> chainIds) {
        if (fault != Fault.NOTHING_HELD) {
            super.holdHeads(chainIds);
        }
    }
}
