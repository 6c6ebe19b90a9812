package org.bayhold.journal;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rows that a module keeps next to the journal, so that a verification can hold them against it. The module says
 * what each entry implies, from the entry alone; the journal looks whether the tables say so.
 */
public interface JournalledRows {
    List<JournalledTable> tables();

    /** The rows that the entry implies; none where it is no business of this module. */
    List<JournalledRow> rowsOf(Entry entry);

    /**
     * The row that shows the present of a chain, folded entry by entry in their order.
     *
     * @param before as folded up to the entry before this one; null where there is no such row
     */
    default @Nullable JournalledRow present(@Nullable JournalledRow before, Entry entry) {
        return before;
    }

    /** Questions about the rows that find nothing where all is well. */
    default List<CrossCheck> crossChecks() {
        return List.of();
    }

    /**
     * A question about the rows among themselves, asked after each entry was found to agree with its own.
     *
     * @param sql yields chain_id, seq and record_id of what is wrong; any but the last may be null
     */
    record CrossCheck(String what, String sql) {}
}
