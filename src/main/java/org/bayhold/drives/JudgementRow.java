package org.bayhold.drives;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** What a drive showed, whole. */
@Entity
@Immutable
@Table(name = "drive_log_judgement")
class JudgementRow extends AppendOnly<UUID> {
    @Id
    private UUID factId;

    private String sha256;

    @Column(columnDefinition = "text")
    private String body;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected JudgementRow() {}

    JudgementRow(UUID factId, String sha256, String body) {
        this.factId = factId;
        this.sha256 = sha256;
        this.body = body;
    }

    @Override
    public UUID getId() {
        return factId;
    }

    String sha256() {
        return sha256;
    }

    String body() {
        return body;
    }
}
