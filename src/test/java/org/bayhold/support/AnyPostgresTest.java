package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnyPostgresTest {

    @ParameterizedTest
    @ValueSource(strings = {"fsync", "full_page_writes", "synchronous_commit"})
    void theServerIsAsDurableAsAShopsWouldBe(String setting) throws SQLException {
        assertThat(ask(AnyPostgres.freshDatabase(AnyPostgresTest.class), "show " + setting))
                .isEqualTo("on");
    }

    @Test
    void eachDatabaseIsFresh() throws SQLException {
        AnyPostgres.Database one = AnyPostgres.freshDatabase(AnyPostgresTest.class);
        AnyPostgres.Database other = AnyPostgres.freshDatabase(AnyPostgresTest.class);

        assertThat(one.url()).isNotEqualTo(other.url());
        try (Connection connection = one.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("create table left_behind (id int)");
        }
        String tables = "select count(*) from information_schema.tables where table_name = 'left_behind'";
        assertThat(ask(one, tables)).isEqualTo("1");
        assertThat(ask(other, tables)).isEqualTo("0");
    }

    private static String ask(AnyPostgres.Database database, String sql) throws SQLException {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
