package org.bayhold.advice;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** An answer became work to be done on its car. */
@Entity
@Immutable
@Table(name = "planned_work")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class PlanRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private UUID adviceId;
    private UUID vehicleId;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected PlanRow() {}

    PlanRow(UUID id, UUID adviceId, UUID vehicleId, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.adviceId = adviceId;
        this.vehicleId = vehicleId;
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    UUID adviceId() {
        return adviceId;
    }

    UUID vehicleId() {
        return vehicleId;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
