package org.bayhold.acceptance.postgres;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import org.bayhold.acceptance.AppendOnlyTables;
import org.bayhold.support.OnPostgres;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AppendOnlyTablesOnPostgresTest extends AppendOnlyTables implements OnPostgres {

    @ParameterizedTest
    @MethodSource("tables")
    void aTableIsNotEmptied(String table) throws SQLException {
        long before = count(table);

        // cascade: without it the foreign keys would refuse, and hide whether the table would
        assertThatThrownBy(() -> execute("truncate " + table + " cascade"))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("append-only");

        assertThat(count(table)).isEqualTo(before);
    }
}
