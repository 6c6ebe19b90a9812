package org.bayhold.journal;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The end of a chain, and the row that a write of the chain locks. */
@Entity
@Table(name = "chain_head")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class ChainHead extends AppendOnly<UUID> {
    @Id
    private UUID chainId;

    @Enumerated(EnumType.STRING)
    private ChainKind kind;

    private long seq;
    private String lastHash;
    private Instant lastRecordedAt;
    private @Nullable UUID openItemId;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected ChainHead() {}

    ChainHead(UUID chainId, ChainKind kind, Instant before) {
        this.chainId = chainId;
        this.kind = kind;
        this.lastHash = Hashing.BEFORE_THE_FIRST;
        this.lastRecordedAt = before;
    }

    @Override
    public UUID getId() {
        return chainId;
    }

    long seq() {
        return seq;
    }

    String lastHash() {
        return lastHash;
    }

    Instant lastRecordedAt() {
        return lastRecordedAt;
    }

    @Nullable UUID openItemId() {
        return openItemId;
    }
}
