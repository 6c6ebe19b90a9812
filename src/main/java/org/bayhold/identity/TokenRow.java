package org.bayhold.identity;

import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.jspecify.annotations.Nullable;

/** An access token, known only by its hash. */
@Entity
@Table(name = "access_token")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class TokenRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "user_id")
    private UserRow user;

    private String tokenHash;
    private String label;
    private boolean signs;
    private Instant createdAt;
    private Instant expiresAt;
    private @Nullable Instant revokedAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected TokenRow() {}

    TokenRow(
            UUID id,
            UserRow user,
            String tokenHash,
            String label,
            boolean signs,
            Instant createdAt,
            Instant expiresAt) {
        this.id = id;
        this.user = user;
        this.tokenHash = tokenHash;
        this.label = label;
        this.signs = signs;
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    @Override
    public UUID getId() {
        return id;
    }

    UserRow user() {
        return user;
    }

    String label() {
        return label;
    }

    boolean signs() {
        return signs;
    }

    Instant createdAt() {
        return createdAt;
    }

    Instant expiresAt() {
        return expiresAt;
    }

    @Nullable Instant revokedAt() {
        return revokedAt;
    }

    boolean worksAt(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt) && user.enabled();
    }
}
