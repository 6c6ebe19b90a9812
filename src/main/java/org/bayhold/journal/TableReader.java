package org.bayhold.journal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads tables of which no more is known than what a {@link JournalledTable} says. */
@Component
class TableReader {
    private static final int MOST_AT_ONCE = 1000;

    private final JdbcClient jdbc;

    TableReader(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every row of the table whose first key column is among {@code owners}, by that. */
    Map<Object, List<Map<String, @Nullable Object>>> rows(JournalledTable table, Collection<Object> owners) {
        String first = table.key().get(0);
        Map<Object, List<Map<String, @Nullable Object>>> rows = new HashMap<>();
        List<Object> asked = List.copyOf(owners);
        for (int from = 0; from < asked.size(); from += MOST_AT_ONCE) {
            List<Object> some = asked.subList(from, Math.min(asked.size(), from + MOST_AT_ONCE));
            for (Map<String, @Nullable Object> row : jdbc.sql(
                            "select * from " + table.name() + " where " + first + " in (:owners)")
                    .param("owners", some)
                    .query(Columns::read)
                    .list()) {
                Object owner = row.get(first);
                if (owner != null) {
                    rows.computeIfAbsent(owner, id -> new ArrayList<>()).add(row);
                }
            }
        }
        return rows;
    }

    /** A row that belongs to no entry. */
    Optional<BrokenEntry> stray(JournalledTable table) {
        if (table.owner() == JournalledTable.Owner.OTHER) {
            return Optional.empty();
        }
        String id = table.owner() == JournalledTable.Owner.ENTRY ? "id" : "chain_id";
        String kinds = table.kinds().stream().map(kind -> "'" + kind + "'").collect(Collectors.joining(", "));
        String first = "t." + table.key().get(0);
        String sql = "select " + orNull(table.chainColumn(), "uuid") + " as chain_id, "
                + orNull(table.seqColumn(), "bigint") + " as seq, " + first + " as record_id from " + table.name()
                + " t where not exists (select 1 from journal_entry e where e." + id + " = " + first
                + " and e.kind in (" + kinds + "))";
        return first(sql, "there is a row in " + table.name() + " and no entry for it");
    }

    /** The record that has a row for a place in a chain, although its entry is gone. */
    Optional<UUID> recordAt(JournalledTable table, UUID chain, long seq) {
        if (table.chainColumn() == null || table.seqColumn() == null) {
            return Optional.empty();
        }
        return jdbc
                .sql("select " + table.key().get(0) + " from " + table.name() + " where " + table.chainColumn()
                        + " = ? and " + table.seqColumn() + " = ?")
                .param(chain)
                .param(seq)
                .query(UUID.class)
                .list()
                .stream()
                .findFirst();
    }

    /** @param sql yields chain_id, seq and record_id */
    Optional<BrokenEntry> first(String sql, String what) {
        return jdbc
                .sql(sql + " order by 1, 2, 3 limit 1")
                .query((row, number) -> new BrokenEntry(
                        row.getObject("chain_id", UUID.class),
                        row.getObject("seq", Long.class),
                        row.getObject("record_id", UUID.class),
                        what))
                .list()
                .stream()
                .findFirst();
    }

    private static String orNull(@Nullable String column, String type) {
        return column == null ? "cast(null as " + type + ")" : "t." + column;
    }
}
