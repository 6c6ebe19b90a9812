package org.bayhold.journal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Walks over the entries of all chains, in order, and holds the rows of the modules against them, a page at a time. */
final class RowsWalk {
    private static final Logger LOG = LoggerFactory.getLogger(RowsWalk.class);

    private final List<JournalledRows> modules;
    private final TableReader reader;
    private final Commitments commitments;
    private final Map<String, JournalledTable> tables = new LinkedHashMap<>();
    private final Map<JournalledRows, JournalledRow> presents = new LinkedHashMap<>();
    private @Nullable Entry last;

    /**
     * Rows that have to be as they are here.
     *
     * @param whole the tables hold no further rows of the entry
     */
    private record Due(Entry at, List<JournalledRow> rows, boolean whole) {}

    RowsWalk(List<JournalledRows> modules, TableReader reader, Commitments commitments) {
        this.modules = modules;
        this.reader = reader;
        this.commitments = commitments;
        tables.put(JournalledTable.CHAIN_HEADS.name(), JournalledTable.CHAIN_HEADS);
        modules.forEach(module -> module.tables().forEach(table -> tables.put(table.name(), table)));
    }

    /** What is wrong with the rows of these entries, the first of them; or of a chain that ended before one of them. */
    Optional<BrokenEntry> page(List<Entry> entries) {
        List<Due> due = new ArrayList<>();
        Optional<BrokenEntry> unreadable = Optional.empty();
        for (Entry entry : entries) {
            if (last != null && !last.chain().equals(entry.chain())) {
                due.add(chainEnded(last));
            }
            try {
                due.add(new Due(entry, rowsOf(entry), true));
            } catch (RuntimeException e) {
                // whatever a module cannot make sense of, it did not write
                LOG.warn("entry {} cannot be read", entry.id(), e);
                unreadable = Optional.of(BrokenEntry.at(entry, "what it records cannot be read"));
                break;
            }
            last = entry;
        }
        Optional<BrokenEntry> first = firstOf(due);
        return first.isPresent() ? first : unreadable;
    }

    /** What is wrong with the chain that was walked over last. */
    Optional<BrokenEntry> end() {
        return last == null ? Optional.empty() : firstOf(List.of(chainEnded(last)));
    }

    private List<JournalledRow> rowsOf(Entry entry) {
        List<JournalledRow> rows = new ArrayList<>();
        for (JournalledRows module : modules) {
            rows.addAll(module.rowsOf(entry));
            JournalledRow present = module.present(presents.get(module), entry);
            if (present != null) {
                presents.put(module, present);
            }
        }
        return rows;
    }

    private Due chainEnded(Entry end) {
        Due due = new Due(end, List.copyOf(presents.values()), false);
        presents.clear();
        return due;
    }

    private Optional<BrokenEntry> firstOf(List<Due> due) {
        Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored = stored(due);
        Map<UUID, String> unkept =
                commitments.unkept(due.stream().filter(Due::whole).map(Due::at).toList());
        for (Due rows : due) {
            for (JournalledRow row : rows.rows()) {
                Optional<BrokenEntry> broken = compare(rows.at(), row, stored);
                if (broken.isPresent()) {
                    return broken;
                }
            }
            Optional<BrokenEntry> broken = rows.whole() ? surplus(rows, stored) : Optional.empty();
            if (broken.isPresent()) {
                return broken;
            }
            String what = rows.whole() ? unkept.get(rows.at().id()) : null;
            if (what != null) {
                return Optional.of(BrokenEntry.at(rows.at(), what));
            }
        }
        return Optional.empty();
    }

    private Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored(List<Due> due) {
        Map<String, Set<Object>> owners = new HashMap<>();
        for (Due rows : due) {
            for (JournalledRow row : rows.rows()) {
                Object owner = row.columns().get(table(row).key().get(0));
                owners.computeIfAbsent(row.table(), name -> new HashSet<>()).add(Objects.requireNonNull(owner));
            }
            if (rows.whole()) {
                tables.values().forEach(table -> {
                    Object owner = table.ownerOf(rows.at());
                    if (owner != null) {
                        owners.computeIfAbsent(table.name(), name -> new HashSet<>())
                                .add(owner);
                    }
                });
            }
        }
        Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored = new HashMap<>();
        owners.forEach((name, ids) -> stored.put(name, reader.rows(Objects.requireNonNull(tables.get(name)), ids)));
        return stored;
    }

    private Optional<BrokenEntry> compare(
            Entry at, JournalledRow row, Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored) {
        List<String> key = table(row).key();
        Optional<Map<String, @Nullable Object>> found = of(
                        stored, row.table(), row.columns().get(key.get(0)))
                .stream()
                .filter(other -> key(key, other).equals(key(key, row.columns())))
                .findFirst();
        if (found.isEmpty()) {
            return Optional.of(BrokenEntry.at(at, "its row in " + row.table() + " is missing"));
        }
        for (Map.Entry<String, @Nullable Object> column : row.columns().entrySet()) {
            if (!found.get().containsKey(column.getKey())) {
                throw new IllegalStateException(row.table() + " has no column " + column.getKey());
            }
            if (!Objects.equals(column.getValue(), found.get().get(column.getKey()))) {
                return Optional.of(BrokenEntry.at(
                        at, "its row in " + row.table() + " has another value in column " + column.getKey()));
            }
        }
        return Optional.empty();
    }

    private Optional<BrokenEntry> surplus(
            Due due, Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored) {
        for (JournalledTable table : tables.values()) {
            Object owner = table.ownerOf(due.at());
            if (owner != null) {
                Set<List<Object>> expected = new HashSet<>();
                due.rows().stream()
                        .filter(row -> row.table().equals(table.name()))
                        .forEach(row -> expected.add(key(table.key(), row.columns())));
                for (Map<String, @Nullable Object> row : of(stored, table.name(), owner)) {
                    if (!expected.contains(key(table.key(), row))) {
                        return Optional.of(BrokenEntry.at(due.at(), "there is a row too many in " + table.name()));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private JournalledTable table(JournalledRow row) {
        JournalledTable table = tables.get(row.table());
        if (table == null) {
            throw new IllegalStateException("no module names the table " + row.table());
        }
        return table;
    }

    private static List<Map<String, @Nullable Object>> of(
            Map<String, Map<Object, List<Map<String, @Nullable Object>>>> stored,
            String table,
            @Nullable Object owner) {
        Map<Object, List<Map<String, @Nullable Object>>> rows = stored.getOrDefault(table, Map.of());
        return owner == null ? List.of() : rows.getOrDefault(owner, List.of());
    }

    private static List<Object> key(List<String> names, Map<String, @Nullable Object> columns) {
        List<Object> key = new ArrayList<>();
        names.forEach(name -> key.add(String.valueOf(columns.get(name))));
        return key;
    }
}
