package org.bayhold.gate;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.buildsheet.Cause;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** A cause of a retune item. */
@Entity
@Immutable
@Table(name = "retune_cause")
@IdClass(CauseRow.Key.class)
class CauseRow extends AppendOnly<CauseRow.Key> {
    /** An item has the same cause once. */
    record Key(UUID itemId, Cause.Code code, UUID recordId) implements Serializable {}

    @Id
    private UUID itemId;

    @Id
    @Enumerated(EnumType.STRING)
    private Cause.Code code;

    @Id
    private UUID recordId;

    private Instant effectiveAt;
    private Instant recordedAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected CauseRow() {}

    CauseRow(UUID itemId, Cause cause, Instant recordedAt) {
        this.itemId = itemId;
        this.code = cause.code();
        this.recordId = cause.recordId();
        this.effectiveAt = cause.effectiveAt();
        this.recordedAt = recordedAt;
    }

    @Override
    public Key getId() {
        return new Key(itemId, code, recordId);
    }

    UUID itemId() {
        return itemId;
    }

    Cause.Code code() {
        return code;
    }

    UUID recordId() {
        return recordId;
    }

    Instant effectiveAt() {
        return effectiveAt;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
