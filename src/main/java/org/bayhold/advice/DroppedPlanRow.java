package org.bayhold.advice;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** Planned work that will not be done. */
@Entity
@Immutable
@Table(name = "planned_work_dropped")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class DroppedPlanRow extends AppendOnly<UUID> {
    @Id
    private UUID plannedWorkId;

    private UUID id;
    private UUID adviceId;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected DroppedPlanRow() {}

    DroppedPlanRow(UUID id, UUID plannedWorkId, UUID adviceId, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.plannedWorkId = plannedWorkId;
        this.adviceId = adviceId;
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return plannedWorkId;
    }
}
