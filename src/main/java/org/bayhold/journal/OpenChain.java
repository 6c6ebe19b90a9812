package org.bayhold.journal;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * A chain during one write, under its lock. First the locks, then the time, then the entries: the order is enforced,
 * because a time taken before a lock comes out of order.
 */
public final class OpenChain {
    /** A clock of a caller may be a little ahead of the server's. */
    private static final Duration TAKEN_AS_NOW = Duration.ofSeconds(60);

    private final UUID chainId;
    private final WriteRequest request;
    private final Database database;
    private final JournalEntries entries;
    private final PersonalData personalData;
    private final FollowUpRows followUps;
    private final CanonicalJson json;

    private @Nullable Instant time;
    private long nextSeq;
    private String lastHash;
    private Instant lastRecordedAt;
    private @Nullable UUID openItemId;

    OpenChain(
            ChainHead head,
            WriteRequest request,
            Database database,
            JournalEntries entries,
            PersonalData personalData,
            FollowUpRows followUps,
            CanonicalJson json) {
        this.chainId = head.getId();
        this.request = request;
        this.database = database;
        this.entries = entries;
        this.personalData = personalData;
        this.followUps = followUps;
        this.json = json;
        this.nextSeq = head.seq();
        this.lastHash = head.lastHash();
        this.lastRecordedAt = head.lastRecordedAt();
        this.openItemId = head.openItemId();
    }

    public UUID chainId() {
        return chainId;
    }

    public UUID by() {
        return request.by();
    }

    /** Holds the shop's policy, categories and corrections, then the given chains, against a change until this commits. */
    public void hold(Collection<UUID> chains) {
        beforeTime();
        database.holdHeads(List.of(Chains.SHOP));
        database.holdHeads(chains);
    }

    /** Keeps every write that rests on the shop's policy, categories or corrections out until this commits. */
    public void takeShop() {
        beforeTime();
        database.takeHeads(List.of(Chains.SHOP));
    }

    private void beforeTime() {
        if (time != null) {
            throw new IllegalStateException("a lock after the time was taken");
        }
    }

    /**
     * The time of this write, in microseconds, strictly later than that of the write before it; from here on no further
     * lock can be taken.
     */
    public Instant recordedAt() {
        if (time == null) {
            Instant now = database.now().truncatedTo(ChronoUnit.MICROS);
            Instant earliest = lastRecordedAt.plus(1, ChronoUnit.MICROS);
            time = now.isBefore(earliest) ? earliest : now;
        }
        return time;
    }

    /** The place in the chain of the next entry. */
    public long nextSeq() {
        return nextSeq;
    }

    /**
     * When a fact happened: as asked, or now where nothing was asked or the caller's clock is a little ahead.
     *
     * @throws Refusal when it lies in the future
     */
    public Instant effectiveAt(@Nullable Instant asked) {
        Instant now = recordedAt();
        if (asked == null) {
            return now;
        }
        if (asked.isAfter(now.plus(TAKEN_AS_NOW))) {
            throw Refusal.invalid("effectiveAt", "time.in-future", asked, now);
        }
        Instant micros = asked.truncatedTo(ChronoUnit.MICROS);
        return micros.isAfter(now) ? now : micros;
    }

    /** Keeps personal data apart and gives the reference that may stand in the record; null stays null. */
    public @Nullable Personal keep(@Nullable String text) {
        return text == null ? null : keepText(text);
    }

    public Personal keepText(String text) {
        return personalData.keep(chainId, text, recordedAt());
    }

    /** Appends an entry at {@link #recordedAt()} and {@link #nextSeq()}. The entries of one write share their time. */
    public void append(String kind, UUID id, Instant effectiveAt, Object record) {
        Instant recordedAt = recordedAt();
        Entry entry = new Entry(
                chainId, nextSeq, id, kind, effectiveAt, recordedAt, request.by(), json.tree(record), lastHash);
        String body = json.write(entry);
        String hash = Hashing.sha256(body);
        entries.save(new JournalRow(entry, body, hash));
        lastHash = hash;
        lastRecordedAt = recordedAt;
        nextSeq++;
    }

    /** Leaves work to be done car by car after the commit; a crash in between forgets none of it. */
    public void followUp(FollowUp.Kind kind, UUID subjectId) {
        followUps.save(new FollowUpRow(new FollowUp(Ids.next(), kind, subjectId, request.by()), recordedAt()));
    }

    /** The hash of the entry appended last. */
    public String lastHash() {
        return lastHash;
    }

    public @Nullable UUID openItemId() {
        return openItemId;
    }

    public void openItemId(@Nullable UUID itemId) {
        this.openItemId = itemId;
    }

    long lastSeq() {
        return nextSeq - 1;
    }

    Instant lastRecordedAt() {
        return lastRecordedAt;
    }
}
