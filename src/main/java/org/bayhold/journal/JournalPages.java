package org.bayhold.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the whole journal, chain by chain and each in order, a page at a time: no more than a page is ever in memory. */
@Component
class JournalPages {
    private static final int SIZE = 250;

    private static final String FROM = "select " + StoredEntry.COLUMNS
            + " from journal_entry e left join chain_head h on h.chain_id = e.chain_id where ";
    private static final String ORDER = " order by e.chain_id, e.seq limit ";

    private final JdbcClient jdbc;
    private final int size;

    @Autowired
    JournalPages(JdbcClient jdbc) {
        this(jdbc, SIZE);
    }

    /** With pages of another size, for a test of where they end. */
    JournalPages(JdbcClient jdbc, int size) {
        this.jdbc = jdbc;
        this.size = size;
    }

    /** @param reader says whether it wants the next page */
    void read(Predicate<List<StoredEntry>> reader) {
        List<StoredEntry> page = after(null);
        while (!page.isEmpty() && reader.test(page)) {
            page = after(page.get(page.size() - 1));
        }
    }

    /** In two steps, because neither database walks an index for "this chain further on, or a later one". */
    private List<StoredEntry> after(@Nullable StoredEntry last) {
        if (last == null) {
            return jdbc.sql(FROM + "true" + ORDER + size)
                    .query(StoredEntry::read)
                    .list();
        }
        List<StoredEntry> page = new ArrayList<>(further(last.chain(), last.seq()));
        if (page.size() < size) {
            page.addAll(later(last.chain()));
        }
        return page;
    }

    private List<StoredEntry> further(UUID chain, long seq) {
        return jdbc.sql(FROM + "e.chain_id = ? and e.seq > ?" + ORDER + size)
                .param(chain)
                .param(seq)
                .query(StoredEntry::read)
                .list();
    }

    private List<StoredEntry> later(UUID chain) {
        return jdbc.sql(FROM + "e.chain_id > ?" + ORDER + size)
                .param(chain)
                .query(StoredEntry::read)
                .list();
    }
}
