package org.bayhold.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.h2.api.Trigger;

/** H2 only: refuses a CLEAR handover while a retune item of the car is open. PostgreSQL has a function for it. */
public final class ClearHandoverTrigger implements Trigger {
    private final Map<String, Integer> columns = new HashMap<>();

    @Override
    public void init(Connection connection, String schema, String trigger, String table, boolean before, int type)
            throws SQLException {
        try (ResultSet found = connection.getMetaData().getColumns(null, schema, table, null)) {
            while (found.next()) {
                String name = found.getString("COLUMN_NAME").toLowerCase(Locale.ROOT);
                columns.put(name, found.getInt("ORDINAL_POSITION") - 1);
            }
        }
    }

    @Override
    public void fire(Connection connection, Object[] oldRow, Object[] newRow) throws SQLException {
        if (!"HANDED_OVER".equals(value(newRow, "kind")) || !"CLEAR".equals(value(newRow, "basis"))) {
            return;
        }
        String open = "select count(*) from retune_item where vehicle_id = ? and cleared_at is null";
        try (PreparedStatement statement = connection.prepareStatement(open)) {
            statement.setObject(1, value(newRow, "vehicle_id"));
            try (ResultSet count = statement.executeQuery()) {
                if (!count.next() || count.getLong(1) > 0) {
                    throw new SQLException("no CLEAR handover while a retune item is open", "23514");
                }
            }
        }
    }

    private Object value(Object[] row, String column) {
        Integer index = columns.get(column);
        if (index == null) {
            throw new IllegalStateException("the table has no column " + column);
        }
        return row[index];
    }
}
