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
import org.jspecify.annotations.Nullable;

/** A stored {@link BenefitNote}. */
@Entity
@Immutable
@Table(name = "part_spec_benefit_note")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class BenefitNoteRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private UUID partSpecId;

    @Enumerated(EnumType.STRING)
    private BenefitNote.Effect effect;

    private @Nullable String engine;
    private @Nullable String ecuHardware;
    private String note;
    private Instant recordedAt;
    private UUID recordedBy;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected BenefitNoteRow() {}

    BenefitNoteRow(BenefitNote said, UUID recordedBy) {
        this.id = said.id();
        this.partSpecId = said.partSpecId();
        this.effect = said.effect();
        this.engine = said.engine();
        this.ecuHardware = said.ecuHardware();
        this.note = said.note();
        this.recordedAt = said.recordedAt();
        this.recordedBy = recordedBy;
    }

    @Override
    public UUID getId() {
        return id;
    }

    BenefitNote said() {
        return new BenefitNote(id, partSpecId, effect, engine, ecuHardware, note, recordedAt);
    }
}
