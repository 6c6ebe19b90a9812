package org.bayhold.journal;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Work that a write leaves to be done car by car. */
@Entity
@Table(name = "follow_up")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class FollowUpRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    @Enumerated(EnumType.STRING)
    private FollowUp.Kind kind;

    private UUID subjectId;
    private UUID askedBy;
    private Instant createdAt;
    private @Nullable Instant doneAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected FollowUpRow() {}

    FollowUpRow(FollowUp followUp, Instant createdAt) {
        this.id = followUp.id();
        this.kind = followUp.kind();
        this.subjectId = followUp.subjectId();
        this.askedBy = followUp.askedBy();
        this.createdAt = createdAt;
    }

    @Override
    public UUID getId() {
        return id;
    }

    FollowUp followUp() {
        return new FollowUp(id, kind, subjectId, askedBy);
    }
}
