package org.bayhold.advice;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.bayhold.journal.Personal;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A stored answer. */
@Entity
@Immutable
@Table(name = "advice")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class AdviceRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private @Nullable UUID vehicleId;
    private String words;

    @Column(columnDefinition = "text")
    private String body;

    private @Nullable UUID questionId;
    private @Nullable UUID askedById;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected AdviceRow() {}

    /** @param body {@link AdviceGiven#body()} as written */
    AdviceRow(UUID id, AdviceGiven given, String words, String body, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.vehicleId = given.vehicleId();
        this.words = words;
        this.body = body;
        this.questionId = idOf(given.question());
        this.askedById = idOf(given.askedBy());
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    private static @Nullable UUID idOf(@Nullable Personal text) {
        return text == null ? null : text.id();
    }

    @Override
    public UUID getId() {
        return id;
    }

    @Nullable UUID vehicleId() {
        return vehicleId;
    }

    String body() {
        return body;
    }

    @Nullable UUID questionId() {
        return questionId;
    }

    @Nullable UUID askedById() {
        return askedById;
    }

    Instant recordedAt() {
        return recordedAt;
    }

    UUID recordedBy() {
        return recordedBy;
    }
}
