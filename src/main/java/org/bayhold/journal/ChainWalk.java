package org.bayhold.journal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;

/**
 * Walks over the entries of all chains, in order, and holds each against its bytes, against the entry before it and
 * against the head of its chain. It keeps nothing but the entry before.
 */
final class ChainWalk {
    /** What a column says, and what the bytes say. */
    private record Column(Function<StoredEntry, Object> stored, Function<Entry, Object> hashed) {}

    private static final Map<String, Column> COLUMNS = columns();

    private final CanonicalJson json;
    private @Nullable StoredEntry before;
    private @Nullable Entry entry;

    ChainWalk(CanonicalJson json) {
        this.json = json;
    }

    private static Map<String, Column> columns() {
        Map<String, Column> columns = new LinkedHashMap<>();
        columns.put("chain_id", new Column(StoredEntry::chain, Entry::chain));
        columns.put("seq", new Column(StoredEntry::seq, Entry::seq));
        columns.put("id", new Column(StoredEntry::id, Entry::id));
        columns.put("kind", new Column(StoredEntry::kind, Entry::kind));
        columns.put("effective_at", new Column(StoredEntry::effectiveAt, Entry::effectiveAt));
        columns.put("recorded_at", new Column(StoredEntry::recordedAt, Entry::recordedAt));
        columns.put("recorded_by", new Column(StoredEntry::by, Entry::by));
        columns.put("prev_hash", new Column(StoredEntry::prev, Entry::prev));
        return columns;
    }

    /** The entry that was walked over last, as its bytes say; there is one after a step that found nothing. */
    Entry entry() {
        return Objects.requireNonNull(entry);
    }

    /** What is wrong up to and with the next entry. */
    Optional<BrokenEntry> step(StoredEntry next) {
        StoredEntry previous = before;
        boolean begins = previous == null || !previous.chain().equals(next.chain());
        if (begins) {
            Optional<BrokenEntry> end = end();
            if (end.isPresent()) {
                return end;
            }
        }
        Optional<BrokenEntry> broken = whole(
                        next, begins ? 1 : Objects.requireNonNull(previous).seq() + 1)
                .or(() -> follows(next, begins ? null : previous));
        before = next;
        return broken;
    }

    /** What is wrong with the end of the chain that was walked over last. */
    Optional<BrokenEntry> end() {
        StoredEntry last = before;
        if (last == null) {
            return Optional.empty();
        }
        StoredEntry.Head head = last.head();
        if (head == null) {
            return Optional.of(BrokenEntry.at(last, "its chain has no head"));
        }
        if (head.seq() > last.seq() && !head.lastHash().equals(last.hash())) {
            String what =
                    "the chain ends with entry " + last.seq() + ", and its head says that there are " + head.seq();
            return Optional.of(new BrokenEntry(last.chain(), last.seq() + 1, null, what));
        }
        if (head.seq() != last.seq()) {
            return Optional.of(BrokenEntry.at(last, "it is the last of its chain, whose head says " + head.seq()));
        }
        if (!head.lastHash().equals(last.hash())) {
            return Optional.of(BrokenEntry.at(last, "it is the last of its chain, whose head has another hash"));
        }
        if (!head.lastRecordedAt().equals(last.recordedAt())) {
            return Optional.of(BrokenEntry.at(last, "it is the last of its chain, whose head has another time"));
        }
        return Optional.empty();
    }

    /** The entry by itself: in its place, its bytes unchanged, its columns as the bytes say. */
    private Optional<BrokenEntry> whole(StoredEntry stored, long expected) {
        if (stored.seq() > expected) {
            return Optional.of(new BrokenEntry(
                    stored.chain(), expected, null, "it is missing: entry " + stored.seq() + " follows instead"));
        }
        if (stored.seq() < expected) {
            return Optional.of(BrokenEntry.at(stored, "its place is not above the one before it"));
        }
        if (!Hashing.sha256(stored.body()).equals(stored.hash())) {
            return Optional.of(BrokenEntry.at(stored, "its bytes do not have the hash that is stored with it"));
        }
        Entry parsed;
        try {
            parsed = json.read(stored.body(), Entry.class);
        } catch (JacksonException e) {
            return Optional.of(BrokenEntry.at(stored, "its bytes cannot be read as an entry"));
        }
        for (Map.Entry<String, Column> column : COLUMNS.entrySet()) {
            Object says = column.getValue().hashed().apply(parsed);
            if (!column.getValue().stored().apply(stored).equals(says)) {
                return Optional.of(BrokenEntry.at(stored, "its column " + column.getKey() + " differs from its bytes"));
            }
        }
        entry = parsed;
        return Optional.empty();
    }

    private static Optional<BrokenEntry> follows(StoredEntry next, @Nullable StoredEntry previous) {
        String hash = previous == null ? Hashing.BEFORE_THE_FIRST : previous.hash();
        if (!next.prev().equals(hash)) {
            return Optional.of(BrokenEntry.at(next, "it does not carry the hash of the entry before it"));
        }
        if (next.effectiveAt().isAfter(next.recordedAt())) {
            return Optional.of(BrokenEntry.at(next, "it happened after it was recorded"));
        }
        if (previous == null) {
            return Optional.empty();
        }
        if (next.recordedAt().isBefore(previous.recordedAt())) {
            return Optional.of(BrokenEntry.at(next, "it is recorded earlier than the entry before it"));
        }
        // only the entries of one write share their time, and a write has one author
        if (next.recordedAt().equals(previous.recordedAt()) && !next.by().equals(previous.by())) {
            return Optional.of(BrokenEntry.at(next, "it has the time of the entry before it, which is another's"));
        }
        return Optional.empty();
    }
}
