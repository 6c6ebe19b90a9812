package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.bayhold.support.EveryKindOfRecord;
import org.bayhold.support.OnADatabase;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Nobody changes or removes what is on record, whatever he comes with. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
public abstract class AppendOnlyTables implements OnADatabase {

    protected static List<String> tables() {
        return List.of(
                "journal_entry",
                "fact",
                "inspection_line",
                "part_spec",
                "part_spec_correction",
                "category_move",
                "calibration",
                "calibration_coverage",
                "calibration_map",
                "drive_log_judgement",
                "column_meaning",
                "calibration_withdrawal",
                "policy_fact",
                "retune_cause",
                "part_spec_benefit_note",
                "advice",
                "planned_work",
                "planned_work_dropped");
    }

    @BeforeAll
    void everythingHasHappened() {
        EveryKindOfRecord.in(shop());
    }

    @ParameterizedTest
    @MethodSource("tables")
    void aRowIsNotChanged(String table) throws SQLException {
        assertThatThrownBy(() -> execute("update " + table + " set " + aColumn(table) + " = " + aColumn(table)))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("append-only");
    }

    @ParameterizedTest
    @MethodSource("tables")
    void aRowIsNotRemoved(String table) throws SQLException {
        long before = count(table);

        assertThatThrownBy(() -> execute("delete from " + table))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("append-only");

        assertThat(before)
                .as("rows in %s, without which this would show nothing", table)
                .isPositive();
        assertThat(count(table)).isEqualTo(before);
    }

    protected String aColumn(String table) throws SQLException {
        try (Connection connection = running().connect();
                Statement statement = connection.createStatement();
                ResultSet none = statement.executeQuery("select * from " + table + " where 1 = 0")) {
            return none.getMetaData().getColumnName(1);
        }
    }

    protected long count(String table) throws SQLException {
        try (Connection connection = running().connect();
                Statement statement = connection.createStatement();
                ResultSet count = statement.executeQuery("select count(*) from " + table)) {
            count.next();
            return count.getLong(1);
        }
    }

    protected void execute(String sql) throws SQLException {
        try (Connection connection = running().connect();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            try {
                statement.execute(sql);
            } finally {
                connection.rollback();
            }
        }
    }
}
