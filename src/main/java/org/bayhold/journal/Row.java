package org.bayhold.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataRetrievalFailureException;

/** One row of an answer of the database; columns are counted from 1. */
public final class Row {
    private final ResultSet columns;

    Row(ResultSet columns) {
        this.columns = columns;
    }

    @FunctionalInterface
    private interface Read<T> {
        @Nullable T from(ResultSet columns) throws SQLException;
    }

    public UUID id(int column) {
        return there(idOrNull(column), column);
    }

    public @Nullable UUID idOrNull(int column) {
        return read(row -> row.getObject(column, UUID.class));
    }

    public String text(int column) {
        return there(textOrNull(column), column);
    }

    public @Nullable String textOrNull(int column) {
        return read(row -> row.getString(column));
    }

    public Instant time(int column) {
        return there(read(row -> row.getObject(column, OffsetDateTime.class)), column)
                .toInstant();
    }

    public long number(int column) {
        return there(read(row -> row.getLong(column)), column);
    }

    public @Nullable Integer wholeOrNull(int column) {
        return read(row -> row.getObject(column, Integer.class));
    }

    private <T> @Nullable T read(Read<T> read) {
        try {
            return read.from(columns);
        } catch (SQLException e) {
            throw new DataRetrievalFailureException("a column could not be read", e);
        }
    }

    private static <T> T there(@Nullable T value, int column) {
        return Objects.requireNonNull(value, () -> "nothing in column " + column);
    }
}
