package org.bayhold.gate;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.journal.AppendOnly;
import org.bayhold.journal.CanonicalJson;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A version of the shop's policy, dated by both times. */
@Entity
@Immutable
@Table(name = "policy_fact")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class PolicyRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private boolean readBackRequired;
    private int readBackMaxAgeHours;
    private boolean troubleCodesChecked;
    private boolean driveLogRequired;
    private boolean acknowledgementRequired;
    private boolean secondPersonRequired;
    private @Nullable String driveLogThresholds;
    private Instant effectiveAt;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected PolicyRow() {}

    PolicyRow(UUID id, Policy policy, Instant at, UUID recordedBy, CanonicalJson json) {
        this.id = id;
        this.readBackRequired = policy.readBackRequired();
        this.readBackMaxAgeHours = policy.readBackMaxAgeHours();
        this.troubleCodesChecked = policy.troubleCodesChecked();
        this.driveLogRequired = policy.driveLogRequired();
        this.acknowledgementRequired = policy.acknowledgementRequired();
        this.secondPersonRequired = policy.secondPersonRequired();
        this.driveLogThresholds = policy.driveLogThresholds() == null ? null : json.write(policy.driveLogThresholds());
        this.effectiveAt = at;
        this.recordedAt = at;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    Instant recordedAt() {
        return recordedAt;
    }

    UUID recordedBy() {
        return recordedBy;
    }

    Policies.Dated dated(CanonicalJson json) {
        Policy policy = new Policy(
                readBackRequired,
                readBackMaxAgeHours,
                troubleCodesChecked,
                driveLogRequired,
                acknowledgementRequired,
                secondPersonRequired,
                driveLogThresholds == null ? null : json.read(driveLogThresholds, Thresholds.class));
        return new Policies.Dated(policy, effectiveAt, recordedAt);
    }
}
