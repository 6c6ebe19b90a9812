package org.bayhold.journal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bayhold.support.FreshBayhold;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionStatus;
import org.springframework.transaction.support.TransactionTemplate;

/** A database without its guards, to tamper with: whoever owns a database can drop its triggers and constraints. */
final class Scratch {
    private final FreshBayhold running;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private final Verification verification;

    /** @param pageSize how many entries its verification reads at once */
    Scratch(FreshBayhold running, int pageSize) {
        this.running = running;
        this.transaction = new TransactionTemplate(running.bean(PlatformTransactionManager.class));
        this.jdbc = running.bean(JdbcClient.class);
        this.verification = new Verification(
                running.bean(Database.class),
                new JournalPages(jdbc, pageSize),
                running.bean(TableReader.class),
                running.bean(Commitments.class),
                running.bean(CanonicalJson.class),
                running.beans(JournalledRows.class));
        dropGuards();
    }

    CanonicalJson json() {
        return running.bean(CanonicalJson.class);
    }

    Verdict verify() {
        return verification.verify();
    }

    /** What a verification finds after {@code tampering}, which is undone. */
    Verdict verifyAfter(Runnable tampering) {
        return transaction.execute(status -> {
            try {
                tampering.run();
                return verification.verify();
            } finally {
                undo(status);
            }
        });
    }

    private static void undo(TransactionStatus status) {
        status.setRollbackOnly();
    }

    List<Map<String, @Nullable Object>> rows(String sql, Object... parameters) {
        return jdbc.sql(sql).params(parameters).query(Columns::read).list();
    }

    /** The only row. */
    Map<String, @Nullable Object> row(String sql, Object... parameters) {
        return jdbc.sql(sql).params(parameters).query(Columns::read).single();
    }

    /** Changes exactly {@code expected} rows. */
    void change(int expected, String sql, @Nullable Object... parameters) {
        JdbcClient.StatementSpec statement = jdbc.sql(sql);
        for (Object parameter : parameters) {
            statement = statement.param(parameter instanceof java.time.Instant time ? atUtc(time) : parameter);
        }
        int changed = statement.update();
        if (changed != expected) {
            throw new IllegalStateException(changed + " rows changed, not " + expected + ": " + sql);
        }
    }

    private static java.time.OffsetDateTime atUtc(java.time.Instant time) {
        return time.atOffset(java.time.ZoneOffset.UTC);
    }

    private void dropGuards() {
        try (Connection connection = running.connect();
                Statement statement = connection.createStatement()) {
            boolean h2 = connection.getMetaData().getURL().startsWith("jdbc:h2:");
            for (String[] trigger : list(statement, """
                    select distinct trigger_name, event_object_table from information_schema.triggers
                    where lower(trigger_schema) = 'public'""")) {
                statement.execute("drop trigger " + trigger[0] + (h2 ? "" : " on " + trigger[1]));
            }
            // PostgreSQL counts "not null" among the checks
            for (String[] constraint : list(statement, """
                    select constraint_name, table_name from information_schema.table_constraints
                    where lower(table_schema) = 'public' and constraint_type in ('FOREIGN KEY', 'CHECK')
                      and constraint_name not like '%not_null'""")) {
                statement.execute("alter table " + constraint[1] + " drop constraint \"" + constraint[0] + "\"");
            }
            statement.execute("alter table journal_entry drop constraint journal_entry_no_fork");
        } catch (SQLException e) {
            throw new IllegalStateException("the guards do not drop", e);
        }
    }

    private static List<String[]> list(Statement statement, String sql) throws SQLException {
        List<String[]> found = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                found.add(new String[] {rows.getString(1), rows.getString(2)});
            }
        }
        return found;
    }
}
