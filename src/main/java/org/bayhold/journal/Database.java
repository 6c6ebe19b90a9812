package org.bayhold.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.boot.jdbc.DatabaseDriver;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** What the two databases do differently: shared locks, the time, and reading one state of everything. */
@Component
public class Database {
    /** What a confirmed commit on PostgreSQL rests on. */
    private static final List<String> DURABLE = List.of("fsync", "full_page_writes", "synchronous_commit");

    private final JdbcClient jdbc;
    private final Clock clock;
    private final boolean postgres;
    private final TransactionTemplate oneMoment;

    Database(DataSource dataSource, JdbcClient jdbc, Clock clock, PlatformTransactionManager transactions)
            throws SQLException {
        this.jdbc = jdbc;
        this.clock = clock;
        try (var connection = dataSource.getConnection()) {
            this.postgres = DatabaseDriver.fromJdbcUrl(connection.getMetaData().getURL()) == DatabaseDriver.POSTGRESQL;
            if (postgres) {
                refuseUnlessDurable(connection);
            }
        }
        this.oneMoment = new TransactionTemplate(transactions);
        oneMoment.setReadOnly(true);
        // the levels at which each reads the state at the transaction's start
        oneMoment.setIsolationLevel(
                postgres
                        ? TransactionDefinition.ISOLATION_REPEATABLE_READ
                        : TransactionDefinition.ISOLATION_SERIALIZABLE);
    }

    private static void refuseUnlessDurable(Connection connection) throws SQLException {
        for (String setting : DURABLE) {
            try (var statement = connection.createStatement();
                    var value = statement.executeQuery("show " + setting)) {
                if (!value.next() || value.getString(1).equals("off")) {
                    throw new NotDurableException(setting);
                }
            }
        }
    }

    /** Runs {@code reading} so that all it reads is of one moment, however long it takes. */
    <T> T atOneMoment(Supplier<T> reading) {
        return oneMoment.execute(status -> {
            if (postgres) {
                // what bounds a write would end a long reading: no lock is held here that anybody waits for
                jdbc.sql("set local statement_timeout = 0").update();
                jdbc.sql("set local idle_in_transaction_session_timeout = '10min'")
                        .update();
            }
            return reading.get();
        });
    }

    public boolean isPostgres() {
        return postgres;
    }

    /** Holds rows against a change, in ascending order; H2 has no shared row lock and takes the exclusive one. */
    void holdHeads(Collection<UUID> chainIds) {
        lockHeads(chainIds, postgres ? "for share" : "for update");
    }

    void takeHeads(Collection<UUID> chainIds) {
        lockHeads(chainIds, "for update");
    }

    private void lockHeads(Collection<UUID> chainIds, String how) {
        // one by one: H2 takes the locks of one statement in no stated order
        for (UUID chainId : chainIds.stream().distinct().sorted().toList()) {
            List<UUID> ignored = jdbc.sql("select chain_id from chain_head where chain_id = ? " + how)
                    .param(chainId)
                    .query(UUID.class)
                    .list();
        }
    }

    /**
     * The time now. PostgreSQL's own clock is the same for every server of the shop ({@code now()} would be the
     * transaction's start); H2 freezes its CURRENT_TIMESTAMP inside a transaction, so there it is the JVM's.
     */
    Instant now() {
        return postgres
                ? jdbc.sql("select clock_timestamp()")
                        .query(OffsetDateTime.class)
                        .single()
                        .toInstant()
                : clock.instant();
    }
}
