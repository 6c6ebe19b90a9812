package org.bayhold.catalog;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A part spec as first recorded. */
@Entity
@Immutable
@Table(name = "part_spec")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class PartSpecRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    @Enumerated(EnumType.STRING)
    private Category category;

    private String maker;
    private String partNumber;
    private String specRevision;
    private String nameKey;

    @Column(columnDefinition = "text")
    private String attributes;

    private @Nullable String complianceNote;
    private @Nullable UUID supersedes;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected PartSpecRow() {}

    PartSpecRow(
            UUID id,
            Category category,
            String maker,
            String partNumber,
            String specRevision,
            String attributes,
            @Nullable String complianceNote,
            @Nullable UUID supersedes,
            Instant recordedAt,
            UUID recordedBy) {
        this.id = id;
        this.category = category;
        this.maker = maker;
        this.partNumber = partNumber;
        this.specRevision = specRevision;
        this.nameKey = nameKey(maker, partNumber, specRevision);
        this.attributes = attributes;
        this.complianceNote = complianceNote;
        this.supersedes = supersedes;
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    static String nameKey(String maker, String partNumber, String specRevision) {
        return String.join("\n", maker, partNumber, specRevision).toLowerCase(Locale.ROOT);
    }

    @Override
    public UUID getId() {
        return id;
    }

    Category category() {
        return category;
    }

    String maker() {
        return maker;
    }

    String partNumber() {
        return partNumber;
    }

    String specRevision() {
        return specRevision;
    }

    String attributes() {
        return attributes;
    }

    @Nullable String complianceNote() {
        return complianceNote;
    }

    @Nullable UUID supersedes() {
        return supersedes;
    }

    Instant recordedAt() {
        return recordedAt;
    }
}
