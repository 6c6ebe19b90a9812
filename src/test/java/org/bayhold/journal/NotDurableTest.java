package org.bayhold.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.bayhold.support.FreshBayhold;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

/** No record is kept on a PostgreSQL that may forget what it has confirmed. */
@ExtendWith(OutputCaptureExtension.class)
class NotDurableTest {

    @Test
    void asynchronousCommitInTheConnectionIsRefused(CapturedOutput output) {
        FreshBayhold.Store store = FreshBayhold.Store.postgres(NotDurableTest.class);
        String options = (store.url().contains("?") ? "&" : "?") + "options=-c%20synchronous_commit=off";

        refuses(new FreshBayhold.Store(store.url() + options, store.user(), store.password()), output);
    }

    @Test
    void asynchronousCommitOfTheDatabaseIsRefused(CapturedOutput output) throws SQLException {
        FreshBayhold.Store store = FreshBayhold.Store.postgres(NotDurableTest.class);
        try (Connection connection = store.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("alter database " + connection.getCatalog() + " set synchronous_commit = off");
        }

        refuses(store, output);
    }

    private static void refuses(FreshBayhold.Store store, CapturedOutput output) {
        assertThatThrownBy(() -> FreshBayhold.withoutCars(store))
                .hasRootCauseInstanceOf(NotDurableException.class)
                .rootCause()
                .hasMessageContaining("synchronous_commit off");
        assertThat(output.getAll())
                .contains("APPLICATION FAILED TO START")
                .contains("PostgreSQL runs with synchronous_commit off")
                .contains("Switch it on");
    }
}
