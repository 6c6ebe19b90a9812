package org.bayhold.journal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.function.Supplier;
import org.bayhold.journal.Tampering.Stored;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.ObjectNode;

/** Tampers with journal and heads at random. Every way takes what it changes from the record as it stands. */
final class Tamperer {
    private final Scratch scratch;
    private final SplittableRandom random;
    private final List<Stored> entries;
    private final TypedColumns columns;

    Tamperer(Scratch scratch, SplittableRandom random) {
        this.scratch = scratch;
        this.random = random;
        this.entries = scratch.rows("select * from journal_entry order by chain_id, seq").stream()
                .map(Tamperer::stored)
                .toList();
        this.columns = new TypedColumns(scratch, random, entries);
    }

    private static Stored stored(Map<String, @Nullable Object> row) {
        return new Stored(
                (UUID) Objects.requireNonNull(row.get("chain_id")),
                (long) Objects.requireNonNull(row.get("seq")),
                (UUID) Objects.requireNonNull(row.get("id")),
                String.valueOf(row.get("kind")),
                String.valueOf(row.get("body")),
                String.valueOf(row.get("hash")));
    }

    /** Every way of tampering; running one tampers. */
    List<Supplier<Tampering>> ways() {
        return List.of(
                this::flipsAByte,
                this::changesAColumnOfTheJournal,
                columns::change,
                columns::change,
                columns::changesAText,
                columns::addsARow,
                columns::closesAnItem,
                this::swapsPlaces,
                this::swapsContents,
                this::deletesOne,
                this::cutsTheTail,
                this::backdates,
                this::forgesAndChainsAnew,
                this::forgesOne,
                this::editsAHead);
    }

    private Tampering flipsAByte() {
        Stored entry = any(entries);
        int at = random.nextInt(entry.body().length());
        char flipped = (char) (entry.body().charAt(at) ^ 1);
        String body = entry.body().substring(0, at) + flipped + entry.body().substring(at + 1);
        set(entry, "body", body);
        return Tampering.at(entry, "flipped byte " + at + " of a body");
    }

    private Tampering changesAColumnOfTheJournal() {
        Stored entry = any(entries);
        String column = any(List.of("id", "kind", "effective_at", "recorded_at", "recorded_by", "prev_hash", "hash"));
        Object old = scratch.row(
                        "select * from journal_entry where chain_id = ? and seq = ?", entry.chain(), entry.seq())
                .get(column);
        Object other = TypedColumns.other(Objects.requireNonNull(old));
        set(entry, column, other);
        UUID id = column.equals("id") ? (UUID) other : entry.id();
        return new Tampering("changed journal_entry." + column, entry.chain(), entry.seq(), id);
    }

    private Tampering swapsPlaces() {
        Stored one = any(entries.stream().filter(entry -> entry.seq() > 1).toList());
        Stored other = any(chain(one).subList(0, (int) one.seq() - 1));
        place(one, -1);
        place(other, one.seq());
        scratch.change(1, "update journal_entry set seq = ? where chain_id = ? and seq = -1", other.seq(), one.chain());
        return new Tampering("swapped the places of two entries", one.chain(), other.seq(), one.id());
    }

    private Tampering swapsContents() {
        Stored one = any(entries);
        Stored other = any(entries.stream().filter(entry -> entry != one).toList());
        set(one, "body", other.body());
        set(one, "hash", other.hash());
        set(other, "body", one.body());
        set(other, "hash", one.hash());
        return Tampering.at(
                entries.indexOf(one) < entries.indexOf(other) ? one : other, "swapped the contents of two entries");
    }

    private Tampering deletesOne() {
        Stored entry = any(entries.stream().filter(any -> any != last(any)).toList());
        delete(entry);
        return new Tampering("deleted an entry", entry.chain(), entry.seq(), left(entry));
    }

    private Tampering cutsTheTail() {
        Stored from = any(entries);
        boolean rowsToo = random.nextBoolean();
        UUID left = rowsToo ? null : left(from);
        for (Stored entry : chain(from)) {
            if (entry.seq() >= from.seq()) {
                delete(entry);
                if (rowsToo) {
                    scratch.change(left(entry) == null ? 0 : 1, "delete from fact where id = ?", entry.id());
                }
            }
        }
        return new Tampering(
                "cut the tail of a chain" + (rowsToo ? " and its facts" : ""), from.chain(), from.seq(), left);
    }

    /** With hashes, rows and head made to fit. */
    private Tampering backdates() {
        Stored entry = any(entries.stream().filter(any -> any.seq() > 1).toList());
        Stored before = chain(entry).get((int) entry.seq() - 2);
        Instant earlier = Instant.parse(
                        scratch.json().parse(before.body()).path("recordedAt").stringValue())
                .minus(1 + random.nextInt(1_000_000), ChronoUnit.MICROS);
        rewrite(entry, true, node -> {
            node.put("recordedAt", earlier.toString());
            node.put("effectiveAt", earlier.toString());
        });
        set(entry, "recorded_at", earlier);
        set(entry, "effective_at", earlier);
        scratch.change(
                left(entry) == null ? 0 : 1,
                "update fact set recorded_at = ?, effective_at = ? where id = ?",
                earlier,
                earlier,
                entry.id());
        return Tampering.at(entry, "back-dated an entry and chained anew");
    }

    /** An author of the past is replaced, and every hash after it fits; the rows are left. */
    private Tampering forgesAndChainsAnew() {
        Stored entry = any(entries.stream().filter(any -> left(any) != null).toList());
        UUID author = Ids.next();
        rewrite(entry, true, node -> {
            node.put("by", author.toString());
            // an entry that shares its time with another's is found by that alone
            node.put("effectiveAt", "2001-01-01T00:00:00Z");
        });
        set(entry, "recorded_by", author);
        set(entry, "effective_at", Instant.parse("2001-01-01T00:00:00Z"));
        return Tampering.at(entry, "forged an entry and chained anew");
    }

    /** An entry is replaced with its hash; what follows is left. */
    private Tampering forgesOne() {
        Stored entry = any(entries.stream().filter(any -> left(any) == null).toList());
        rewrite(entry, false, node -> ((ObjectNode) node.get("record")).put("forged", true));
        Stored last = last(entry);
        Stored found = entry == last ? last : chain(entry).get((int) entry.seq());
        return Tampering.at(found, "forged an entry");
    }

    private Tampering editsAHead() {
        UUID chain = any(entries).chain();
        Stored last =
                last(any(entries.stream().filter(e -> e.chain().equals(chain)).toList()));
        Map<String, @Nullable Object> head = scratch.row("select * from chain_head where chain_id = ?", chain);
        String column = any(List.of("seq", "last_hash", "last_recorded_at", "open_item_id", "kind"));
        if (column.equals("kind") && (chain.equals(Chains.SHOP) || chain.equals(Chains.IDENTITY))) {
            column = "seq";
        }
        Object old = head.get(column);
        Object other = old == null ? Ids.next() : TypedColumns.other(old);
        scratch.change(1, "update chain_head set " + column + " = ? where chain_id = ?", other, chain);
        return Tampering.at(column.equals("kind") ? chain(last).get(0) : last, "edited chain_head." + column);
    }

    private interface Change {
        void apply(ObjectNode entry);
    }

    /** @param onwards every entry after it, and the head, get the hashes that fit */
    private void rewrite(Stored entry, boolean onwards, Change change) {
        String prev = null;
        for (Stored next : chain(entry)) {
            if (next.seq() == entry.seq() || (next.seq() > entry.seq() && onwards)) {
                ObjectNode node = (ObjectNode) scratch.json().parse(next.body());
                if (prev == null) {
                    change.apply(node);
                } else {
                    node.put("prev", prev);
                    set(next, "prev_hash", prev);
                }
                String body = scratch.json().write(node);
                prev = Hashing.sha256(body);
                set(next, "body", body);
                set(next, "hash", prev);
            }
        }
        if (onwards) {
            scratch.change(1, "update chain_head set last_hash = ? where chain_id = ?", prev, entry.chain());
            if (entry == last(entry)) {
                scratch.change(
                        1,
                        "update chain_head set last_recorded_at = (select e.recorded_at from journal_entry e"
                                + " where e.chain_id = chain_head.chain_id and e.seq = chain_head.seq) where chain_id = ?",
                        entry.chain());
            }
        }
    }

    private void set(Stored entry, String column, @Nullable Object value) {
        scratch.change(
                1,
                "update journal_entry set " + column + " = ? where chain_id = ? and seq = ?",
                value,
                entry.chain(),
                entry.seq());
    }

    private void place(Stored entry, long seq) {
        set(entry, "seq", seq);
    }

    private void delete(Stored entry) {
        scratch.change(1, "delete from journal_entry where chain_id = ? and seq = ?", entry.chain(), entry.seq());
    }

    /** The id of an entry that has a fact; null for any other, of which nothing tells when it is gone. */
    private @Nullable UUID left(Stored entry) {
        return columns.hasFact(entry) ? entry.id() : null;
    }

    private List<Stored> chain(Stored of) {
        return entries.stream()
                .filter(entry -> entry.chain().equals(of.chain()))
                .toList();
    }

    private Stored last(Stored of) {
        List<Stored> chain = chain(of);
        return chain.get(chain.size() - 1);
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
