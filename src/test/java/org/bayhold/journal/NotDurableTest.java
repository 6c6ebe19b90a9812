package org.bayhold.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.bayhold.support.AnyPostgres;
import org.bayhold.support.RunningBayhold;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

/** No record is kept on a PostgreSQL that may forget what it has confirmed. */
@ExtendWith(OutputCaptureExtension.class)
class NotDurableTest {

    @Test
    void asynchronousCommitInTheConnectionIsRefused(CapturedOutput output) {
        AnyPostgres.Database database = AnyPostgres.freshDatabase(NotDurableTest.class);
        String options = (database.url().contains("?") ? "&" : "?") + "options=-c%20synchronous_commit=off";

        refuses(new AnyPostgres.Database(database.url() + options, database.user(), database.password()), output);
    }

    @Test
    void asynchronousCommitOfTheDatabaseIsRefused(CapturedOutput output) throws SQLException {
        AnyPostgres.Database database = AnyPostgres.freshDatabase(NotDurableTest.class);
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("alter database " + connection.getCatalog() + " set synchronous_commit = off");
        }

        refuses(database, output);
    }

    private static void refuses(AnyPostgres.Database database, CapturedOutput output) {
        assertThatThrownBy(() -> RunningBayhold.startedOn(database))
                .hasRootCauseInstanceOf(NotDurableException.class)
                .rootCause()
                .hasMessageContaining("synchronous_commit off");
        assertThat(output.getAll())
                .contains("APPLICATION FAILED TO START")
                .contains("PostgreSQL runs with synchronous_commit off")
                .contains("Switch it on");
    }
}
