package org.bayhold.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/**
 * Verifies the whole record as it stands at one moment: each entry against its bytes, its chain and its head, then the
 * rows of every module against the entries. It reads the journal once, a page at a time, and stops at the first place
 * that does not hold.
 *
 * <p>Whoever rewrites a chain from some entry to its end, its head and its rows with it, is not found here: that takes a
 * copy of the journal, or of the hash of an entry, kept elsewhere. docs/operations.md, "The journal".
 */
@Component
public class Verification {
    private final Database database;
    private final JournalPages pages;
    private final TableReader reader;
    private final Commitments commitments;
    private final CanonicalJson json;
    private final ObjectProvider<JournalledRows> modules;

    Verification(
            Database database,
            JournalPages pages,
            TableReader reader,
            Commitments commitments,
            CanonicalJson json,
            ObjectProvider<JournalledRows> modules) {
        this.database = database;
        this.pages = pages;
        this.reader = reader;
        this.commitments = commitments;
        this.json = json;
        this.modules = modules;
    }

    /** Reads one state of the database, however many writes go on. */
    public Verdict verify() {
        return database.atOneMoment(() -> new Run().verdict());
    }

    /** One verification. */
    private final class Run {
        private final List<JournalledRows> rows = modules.orderedStream().toList();
        private final ChainWalk chains = new ChainWalk(json);
        private final RowsWalk rowsWalk = new RowsWalk(rows, reader, commitments);
        private long entries;
        private @Nullable BrokenEntry broken;

        Verdict verdict() {
            pages.read(page -> {
                broken = page(page).orElse(null);
                return broken == null;
            });
            Optional<BrokenEntry> first = Optional.ofNullable(broken)
                    .or(chains::end)
                    .or(rowsWalk::end)
                    .or(this::headWithoutEntries)
                    .or(this::strayRow)
                    .or(this::crossChecked);
            return first.map(found -> Verdict.broken(entries, named(found))).orElseGet(() -> Verdict.intact(entries));
        }

        private Optional<BrokenEntry> page(List<StoredEntry> page) {
            List<Entry> sound = new ArrayList<>();
            Optional<BrokenEntry> found = Optional.empty();
            for (StoredEntry stored : page) {
                found = chains.step(stored);
                if (found.isPresent()) {
                    break;
                }
                sound.add(chains.entry());
            }
            entries += sound.size();
            Optional<BrokenEntry> inChain = found;
            return rowsWalk.page(sound).or(() -> inChain);
        }

        /** Only the chains that exist from the first start on may be empty. */
        private Optional<BrokenEntry> headWithoutEntries() {
            String sql = "select h.chain_id, cast(1 as bigint) as seq, cast(null as uuid) as record_id"
                    + " from chain_head h where not exists (select 1 from journal_entry e where e.chain_id = h.chain_id)"
                    + " and (h.seq <> 0 or h.last_hash <> '" + Hashing.BEFORE_THE_FIRST + "' or h.chain_id not in ('"
                    + Chains.SHOP + "', '" + Chains.IDENTITY + "'))";
            return reader.first(sql, "it is missing: its chain has a head and no entry");
        }

        private Optional<BrokenEntry> strayRow() {
            return rows.stream()
                    .flatMap(module -> module.tables().stream())
                    .flatMap(table -> reader.stray(table).stream())
                    .findFirst();
        }

        private Optional<BrokenEntry> crossChecked() {
            return rows.stream()
                    .flatMap(module -> module.crossChecks().stream())
                    .flatMap(check -> reader.first(check.sql(), check.what()).stream())
                    .findFirst();
        }

        /** An entry that is missing may have left a row, which says which record it was. */
        private BrokenEntry named(BrokenEntry found) {
            UUID chain = found.chainId();
            Long seq = found.seq();
            if (found.recordId() != null || chain == null || seq == null) {
                return found;
            }
            UUID id = rows.stream()
                    .flatMap(module -> module.tables().stream())
                    .flatMap(table -> reader.recordAt(table, chain, seq).stream())
                    .findFirst()
                    .orElse(null);
            return new BrokenEntry(chain, seq, id, found.what());
        }
    }
}
