package org.bayhold.journal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A journal entry as stored: its canonical bytes with their hash, and the columns that make it findable. */
@Entity
@Immutable
@Table(name = "journal_entry")
@IdClass(JournalRow.Key.class)
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class JournalRow extends AppendOnly<JournalRow.Key> {
    /** Position in a chain. */
    record Key(UUID chainId, long seq) implements Serializable {}

    @Id
    private UUID chainId;

    @Id
    private long seq;

    private UUID id;
    private String kind;
    private Instant effectiveAt;
    private Instant recordedAt;
    private UUID recordedBy;

    @Column(columnDefinition = "text")
    private String body;

    private String prevHash;
    private String hash;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected JournalRow() {}

    JournalRow(Entry entry, String body, String hash) {
        this.chainId = entry.chain();
        this.seq = entry.seq();
        this.id = entry.id();
        this.kind = entry.kind();
        this.effectiveAt = entry.effectiveAt();
        this.recordedAt = entry.recordedAt();
        this.recordedBy = entry.by();
        this.body = body;
        this.prevHash = entry.prev();
        this.hash = hash;
    }

    @Override
    public Key getId() {
        return new Key(chainId, seq);
    }

    String body() {
        return body;
    }

    String hash() {
        return hash;
    }
}
