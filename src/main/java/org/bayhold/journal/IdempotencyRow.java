package org.bayhold.journal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A request that carried a key, and the answer it got. */
@Entity
@Table(name = "idempotency")
@IdClass(IdempotencyRow.Key.class)
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class IdempotencyRow extends AppendOnly<IdempotencyRow.Key> {
    /** A key means something only for the principal who made it. */
    record Key(UUID principal, String idemKey) implements Serializable {}

    @Id
    private UUID principal;

    @Id
    private String idemKey;

    private String fingerprint;

    @Column(columnDefinition = "text")
    private @Nullable String answer;

    private Instant createdAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected IdempotencyRow() {}

    IdempotencyRow(UUID principal, String idemKey, String fingerprint, Instant createdAt) {
        this.principal = principal;
        this.idemKey = idemKey;
        this.fingerprint = fingerprint;
        this.createdAt = createdAt;
    }

    @Override
    public Key getId() {
        return new Key(principal, idemKey);
    }

    String fingerprint() {
        return fingerprint;
    }

    @Nullable String answer() {
        return answer;
    }
}
