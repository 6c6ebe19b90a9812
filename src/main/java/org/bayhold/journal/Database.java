package org.bayhold.journal;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.boot.jdbc.DatabaseDriver;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the two databases do differently in a write: shared locks and the time. */
@Component
public class Database {
    private final JdbcClient jdbc;
    private final Clock clock;
    private final boolean postgres;

    Database(DataSource dataSource, JdbcClient jdbc, Clock clock) throws java.sql.SQLException {
        this.jdbc = jdbc;
        this.clock = clock;
        try (var connection = dataSource.getConnection()) {
            this.postgres = DatabaseDriver.fromJdbcUrl(connection.getMetaData().getURL()) == DatabaseDriver.POSTGRESQL;
        }
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
