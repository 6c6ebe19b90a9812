package org.bayhold.journal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A row as it has to be.
 *
 * @param columns by name, the key's among them; a column that is not named may hold anything
 */
public record JournalledRow(String table, Map<String, @Nullable Object> columns) {
    public JournalledRow {
        // not Map.copyOf: a column may be null
        columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    }

    /** Every column of an entity, as it would be stored. */
    public static JournalledRow of(String table, Object entity) {
        return new JournalledRow(table, Columns.of(entity));
    }

    /** A row of which no more is known so far than its key. */
    public static JournalledRow keyed(String table, String key, UUID id) {
        return new JournalledRow(table, Map.of(key, id));
    }

    /** The head of a chain. */
    public static JournalledRow head(UUID chain) {
        return keyed(
                JournalledTable.CHAIN_HEADS.name(),
                JournalledTable.CHAIN_HEADS.key().get(0),
                chain);
    }

    public static JournalledRow head(UUID chain, ChainKind kind) {
        return head(chain).with("kind", kind);
    }

    public JournalledRow with(String column, @Nullable Object value) {
        Map<String, @Nullable Object> more = new LinkedHashMap<>(columns);
        more.put(column, Columns.plain(value));
        return new JournalledRow(table, more);
    }

    public JournalledRow without(String column) {
        Map<String, @Nullable Object> less = new LinkedHashMap<>(columns);
        less.remove(column);
        return new JournalledRow(table, less);
    }
}
