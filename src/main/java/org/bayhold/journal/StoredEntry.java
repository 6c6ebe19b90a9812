package org.bayhold.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A journal entry as the database has it, whatever became of it there.
 *
 * @param head the end of its chain as stored; null where the chain has none
 */
record StoredEntry(
        UUID chain,
        long seq,
        UUID id,
        String kind,
        Instant effectiveAt,
        Instant recordedAt,
        UUID by,
        String body,
        String prev,
        String hash,
        @Nullable Head head) {
    static final String COLUMNS = "e.chain_id, e.seq, e.id, e.kind, e.effective_at, e.recorded_at, e.recorded_by,"
            + " e.body, e.prev_hash, e.hash, h.chain_id, h.seq, h.last_hash, h.last_recorded_at";

    /** The end of a chain as stored. */
    record Head(long seq, String lastHash, Instant lastRecordedAt) {}

    /** Reads {@link #COLUMNS}. */
    static StoredEntry read(ResultSet row, int rowNumber) throws SQLException {
        Head head = row.getObject(11) == null ? null : new Head(row.getLong(12), row.getString(13), instant(row, 14));
        return new StoredEntry(
                row.getObject(1, UUID.class),
                row.getLong(2),
                row.getObject(3, UUID.class),
                row.getString(4),
                instant(row, 5),
                instant(row, 6),
                row.getObject(7, UUID.class),
                row.getString(8),
                row.getString(9),
                row.getString(10),
                head);
    }

    private static Instant instant(ResultSet row, int column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
