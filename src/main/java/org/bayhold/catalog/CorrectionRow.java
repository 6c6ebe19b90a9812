package org.bayhold.catalog;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** The attributes of a part spec were wrong; these are the right ones from now on. */
@Entity
@Immutable
@Table(name = "part_spec_correction")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class CorrectionRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private UUID partSpecId;

    @Column(columnDefinition = "text")
    private String attributes;

    private UUID reasonId;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected CorrectionRow() {}

    CorrectionRow(UUID id, UUID partSpecId, String attributes, UUID reasonId, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.partSpecId = partSpecId;
        this.attributes = attributes;
        this.reasonId = reasonId;
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    UUID partSpecId() {
        return partSpecId;
    }

    String attributes() {
        return attributes;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
