package org.bayhold.catalog;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;

/** A stored {@link CategoryMove}. */
@Entity
@Immutable
@Table(name = "category_move")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class CategoryMoveRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    @Enumerated(EnumType.STRING)
    private Category category;

    private boolean noEffect;
    private UUID reasonId;
    private Instant effectiveAt;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected CategoryMoveRow() {}

    CategoryMoveRow(UUID id, CategoryMove move, UUID reasonId, UUID recordedBy) {
        this.id = id;
        this.category = move.category();
        this.noEffect = move.noEffect();
        this.reasonId = reasonId;
        this.effectiveAt = move.effectiveAt();
        this.recordedAt = move.recordedAt();
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    CategoryMove move() {
        return new CategoryMove(category, noEffect, effectiveAt, recordedAt);
    }
}
