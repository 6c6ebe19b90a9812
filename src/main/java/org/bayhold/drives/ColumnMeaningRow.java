package org.bayhold.drives;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** What a column holds, as the shop said at a time. */
@Entity
@Immutable
@Table(name = "column_meaning")
@SuppressWarnings("UnusedVariable") // a column that only the database reads
class ColumnMeaningRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private String name;
    private @Nullable String parameter;
    private @Nullable String unit;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected ColumnMeaningRow() {}

    ColumnMeaningRow(UUID id, ColumnMeanings.Told told, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.name = told.name();
        this.parameter = told.parameter() == null ? null : told.parameter().name();
        this.unit = told.unit() == null ? null : told.unit().name();
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    String name() {
        return name;
    }

    @Nullable String parameter() {
        return parameter;
    }

    @Nullable String unit() {
        return unit;
    }
}
