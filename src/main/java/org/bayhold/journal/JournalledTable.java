package org.bayhold.journal;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A table whose rows follow from journal entries.
 *
 * @param key the columns that tell its rows apart; the first one is looked up
 * @param owner what the first of them holds
 * @param kinds the kinds of entries that own rows of it; a row without such an entry is wrong
 * @param chainColumn the column that names the chain, where there is one
 * @param seqColumn the column with the place in the chain, where there is one
 */
public record JournalledTable(
        String name,
        List<String> key,
        Owner owner,
        Set<String> kinds,
        @Nullable String chainColumn,
        @Nullable String seqColumn) {
    /** Heads of chains: their end is looked at anyhow, and modules may know more of them. */
    static final JournalledTable CHAIN_HEADS = ofOthers("chain_head", "chain_id");

    public JournalledTable {
        key = List.copyOf(key);
        kinds = Set.copyOf(kinds);
    }

    /** What a row belongs to. */
    public enum Owner {
        /** One entry, by its id. */
        ENTRY,
        /** One chain, which has one entry of the kinds. */
        CHAIN,
        /** Something else: no more is known of it than what the entries say. */
        OTHER
    }

    /** Rows with the id of their entry, or several that name it. */
    public static JournalledTable ofEntries(String name, Set<String> kinds, String... key) {
        return new JournalledTable(name, List.of(key), Owner.ENTRY, kinds, null, null);
    }

    /** Rows with the id of their chain, or several that name it. */
    public static JournalledTable ofChains(String name, Set<String> kinds, String... key) {
        return new JournalledTable(name, List.of(key), Owner.CHAIN, kinds, key[0], null);
    }

    /** Rows of which entries say something, and that follow from several. */
    public static JournalledTable ofOthers(String name, String... key) {
        return new JournalledTable(name, List.of(key), Owner.OTHER, Set.of(), null, null);
    }

    /** The same, with the columns that say where in which chain the entry stands. */
    public JournalledTable placed(String chain, @Nullable String seq) {
        return new JournalledTable(name, key, owner, kinds, chain, seq);
    }

    /** What the first column of the key holds for an entry; null where the entry owns no row. */
    @Nullable Object ownerOf(Entry entry) {
        if (!kinds.contains(entry.kind())) {
            return null;
        }
        return owner == Owner.ENTRY ? entry.id() : entry.chain();
    }
}
