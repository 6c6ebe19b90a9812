package org.bayhold.gate;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.bayhold.journal.Personal;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/** A retune item as it is now. */
@Entity
@Table(name = "retune_item")
class RetuneItemRow extends AppendOnly<UUID> {
    /** An item whose causes were all struck out closes by itself under this basis. */
    static final String CAUSES_VOIDED = "CAUSES_VOIDED";

    @Id
    private UUID id;

    private UUID vehicleId;
    private Instant openedAt;

    @Enumerated(EnumType.STRING)
    private Risk risk;

    private @Nullable Instant clearedAt;
    private @Nullable String basis;
    private @Nullable UUID assigneeId;
    private @Nullable Instant promisedAt;
    private @Nullable UUID noteId;
    private long version;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected RetuneItemRow() {}

    RetuneItemRow(UUID id, UUID vehicleId, Instant openedAt, Risk risk) {
        this.id = id;
        this.vehicleId = vehicleId;
        this.openedAt = openedAt;
        this.risk = risk;
        this.version = 1;
    }

    void joined(Risk now) {
        this.risk = now;
        this.version++;
    }

    void closed(Instant at, String how) {
        this.clearedAt = at;
        this.basis = how;
        this.version++;
    }

    void planned(@Nullable Personal assignee, @Nullable Instant promised, @Nullable Personal note) {
        this.assigneeId = assignee == null ? assigneeId : assignee.id();
        this.promisedAt = promised == null ? promisedAt : promised;
        this.noteId = note == null ? noteId : note.id();
        this.version++;
    }

    @Override
    public UUID getId() {
        return id;
    }

    UUID vehicleId() {
        return vehicleId;
    }

    Instant openedAt() {
        return openedAt;
    }

    Risk risk() {
        return risk;
    }

    @Nullable Instant clearedAt() {
        return clearedAt;
    }

    @Nullable String basis() {
        return basis;
    }

    @Nullable UUID assigneeId() {
        return assigneeId;
    }

    @Nullable Instant promisedAt() {
        return promisedAt;
    }

    @Nullable UUID noteId() {
        return noteId;
    }

    long version() {
        return version;
    }

    boolean isOpen() {
        return clearedAt == null;
    }
}
