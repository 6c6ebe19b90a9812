package org.bayhold.race;

import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What the schema itself refuses, whatever the application does. */
final class Backstops {
    /** On both: two entries at one place, a chain that forks, a handover while an item is open, two open items. */
    private static final List<String> GONE = List.of(
            "alter table fact drop constraint fact_journalled",
            "alter table fact drop constraint fact_place",
            "alter table journal_entry drop constraint journal_entry_no_fork",
            "create index journal_entry_place on journal_entry (chain_id, seq)");

    private static final List<String> GONE_ON_H2 = List.of(
            "alter table journal_entry drop primary key",
            "drop trigger fact_clear_needs_no_open_item",
            "alter table retune_item drop constraint retune_item_one_open");

    private static final List<String> GONE_ON_POSTGRES = List.of(
            "alter table journal_entry drop constraint journal_entry_pkey",
            "drop trigger fact_clear_needs_no_open_item on fact",
            "drop index retune_item_one_open");

    private Backstops() {}

    static void drop(DataSource database, boolean postgres) {
        JdbcClient jdbc = JdbcClient.create(database);
        GONE.forEach(sql -> run(jdbc, sql));
        (postgres ? GONE_ON_POSTGRES : GONE_ON_H2).forEach(sql -> run(jdbc, sql));
    }

    private static void run(JdbcClient jdbc, String sql) {
        int ignored = jdbc.sql(sql).update();
    }
}
