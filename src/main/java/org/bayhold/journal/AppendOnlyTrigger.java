package org.bayhold.journal;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;

/** H2 only: refuses UPDATE and DELETE on a table of facts, whoever asks. PostgreSQL has a function for it. */
public final class AppendOnlyTrigger implements Trigger {
    private String table = "?";

    @Override
    public void init(Connection connection, String schema, String trigger, String table, boolean before, int type) {
        this.table = table;
    }

    @Override
    public void fire(Connection connection, Object[] oldRow, Object[] newRow) throws SQLException {
        throw new SQLException("table " + table + " is append-only", "23514");
    }
}
