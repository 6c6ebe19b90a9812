package org.bayhold.journal;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Personal data apart from the record: the only text of a record that can be erased. */
@Entity
@Table(name = "personal_data")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class PersonalRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private UUID chainId;
    private byte @Nullable [] salt;
    private @Nullable String text;
    private Instant keptAt;
    private @Nullable Instant erasedAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected PersonalRow() {}

    PersonalRow(UUID id, UUID chainId, byte[] salt, String text, Instant keptAt) {
        this.id = id;
        this.chainId = chainId;
        this.salt = salt.clone();
        this.text = text;
        this.keptAt = keptAt;
    }

    @Override
    public UUID getId() {
        return id;
    }

    @Nullable String text() {
        return text;
    }
}
