package org.bayhold.calibration;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** A revision was withdrawn; once, and for good. */
@Entity
@Immutable
@Table(name = "calibration_withdrawal")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class WithdrawalRow extends AppendOnly<UUID> {
    @Id
    private UUID calibrationId;

    private UUID reasonId;
    private Instant withdrawnAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected WithdrawalRow() {}

    WithdrawalRow(UUID calibrationId, UUID reasonId, Instant withdrawnAt, UUID recordedBy) {
        this.calibrationId = calibrationId;
        this.reasonId = reasonId;
        this.withdrawnAt = withdrawnAt;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return calibrationId;
    }

    UUID reasonId() {
        return reasonId;
    }

    Instant withdrawnAt() {
        return withdrawnAt;
    }
}
