package org.bayhold.bench;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/** Rows of one table on their way into PostgreSQL, on a connection of their own; values must need no escaping. */
final class CopyTable implements AutoCloseable {
    private static final int BUFFER = 1 << 16;

    private final Connection connection;
    private final CopyIn copy;
    private final StringBuilder lines = new StringBuilder(BUFFER + 1_000);

    CopyTable(Connection connection, String tableAndColumns) throws SQLException {
        this.connection = connection;
        try (var statement = connection.createStatement()) {
            // neither triggers nor foreign keys look at what is copied
            statement.execute("set session_replication_role = replica");
        }
        this.copy =
                connection.unwrap(PGConnection.class).getCopyAPI().copyIn("copy " + tableAndColumns + " from stdin");
    }

    void row(@Nullable Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            lines.append(i == 0 ? "" : "\t");
            Object value = values[i];
            if (value == null) {
                lines.append("\\N");
            } else {
                lines.append(value);
            }
        }
        lines.append('\n');
        if (lines.length() > BUFFER) {
            send();
        }
    }

    private void send() throws SQLException {
        byte[] bytes = lines.toString().getBytes(StandardCharsets.UTF_8);
        copy.writeToCopy(bytes, 0, bytes.length);
        lines.setLength(0);
    }

    @Override
    public void close() throws SQLException {
        send();
        copy.endCopy();
        connection.close();
    }
}
