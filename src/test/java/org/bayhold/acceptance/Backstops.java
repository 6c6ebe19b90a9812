package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.adjust;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What the database refuses by itself, so that no mistake of the application opens the gate or forks a chain. */
public abstract class Backstops implements OnADatabase {
    private static final String NEVER_SEEN = "f".repeat(64);

    @Test
    void aCarHasOneOpenItem() {
        Car car = shop().registers(aCar());
        String item = "insert into retune_item (id, vehicle_id, opened_at, risk, version) values ('" + UUID.randomUUID()
                + "', '" + car.id() + "', current_timestamp, 'LOW', 1)";
        assertThatCode(() -> inOneTransaction(item)).as("the first").doesNotThrowAnyException();
        car.changes(adjust("WASTEGATE"));

        assertThatThrownBy(() -> inOneTransaction(item))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("retune_item_one_open"));
    }

    @Test
    void noCarLeavesAsClearWhileAnItemIsOpen() {
        Car car = shop().registers(aCar());
        assertThatCode(() -> inOneTransaction(nextEntry(car, 1, "last_hash"), handover(car, "CLEAR", 0)))
                .as("without an item")
                .doesNotThrowAnyException();
        car.changes(adjust("WASTEGATE"));

        assertThatThrownBy(() -> inOneTransaction(nextEntry(car, 1, "last_hash"), handover(car, "CLEAR", 0)))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("no CLEAR handover while a retune item is open");
        assertThatCode(() -> inOneTransaction(nextEntry(car, 1, "last_hash"), handover(car, "EXCEPTION", 3)))
                .as("by exception")
                .doesNotThrowAnyException();
    }

    @Test
    void clearIsClear() {
        Car car = shop().registers(aCar());

        assertThatThrownBy(() -> inOneTransaction(nextEntry(car, 1, "last_hash"), handover(car, "CLEAR", 1)))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("fact_clear_is_clear"));
        assertThatThrownBy(() -> inOneTransaction(nextEntry(car, 1, "last_hash"), handover(car, null, 0)))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("fact_handover_whole"));
    }

    @Test
    void aHandoverNeedsItsEntry() {
        Car car = shop().registers(aCar());

        assertThatThrownBy(() -> inOneTransaction(handover(car, "CLEAR", 0)))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("fact_journalled"));
    }

    @Test
    void aPlaceInAChainIsTakenOnce() {
        Car car = shop().registers(aCar());
        car.changes(adjust("WASTEGATE"));

        assertThatThrownBy(() -> inOneTransaction(nextEntry(car, 0, "'" + NEVER_SEEN + "'")))
                .isInstanceOf(SQLException.class)
                .hasFieldOrPropertyWithValue("SQLState", "23505");
    }

    @Test
    void aChainDoesNotFork() {
        Car car = shop().registers(aCar());
        car.changes(adjust("WASTEGATE"));
        String ofTheLast = "(select e.prev_hash from journal_entry e where e.chain_id = h.chain_id and e.seq = h.seq)";
        assertThatCode(() -> inOneTransaction(nextEntry(car, 1, "last_hash")))
                .as("the entry that follows")
                .doesNotThrowAnyException();

        assertThatThrownBy(() -> inOneTransaction(nextEntry(car, 1, ofTheLast)))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("journal_entry_no_fork"));
    }

    @Test
    void anEntryHappensBeforeItIsRecorded() {
        Car car = shop().registers(aCar());
        String entry =
                nextEntry(car, 1, "last_hash").replaceFirst("last_recorded_at", "timestamp '2999-01-01 00:00:00'");

        assertThatThrownBy(() -> inOneTransaction(entry))
                .isInstanceOf(SQLException.class)
                .satisfies(failure -> assertThat(failure.getMessage()).containsIgnoringCase("journal_entry_not_ahead"));
    }

    /** H2 issue 4299: until 2.4.240 the second run of an EXISTS in one transaction missed the write in between. */
    @Test
    void anExistsThatRunsTwiceSeesTheWriteInBetween() throws SQLException {
        String key = UUID.randomUUID().toString();
        String ask = "select case when exists (select 1 from idempotency i where i.idem_key = ?) then 1 else 0 end";
        String write =
                "insert into idempotency (principal, idem_key, fingerprint, created_at) values (?, ?, '', current_timestamp)";
        try (Connection connection = running().connect();
                PreparedStatement exists = connection.prepareStatement(ask);
                PreparedStatement insert = connection.prepareStatement(write)) {
            connection.setAutoCommit(false);
            exists.setString(1, key);
            assertThat(number(exists)).as("before").isZero();
            insert.setObject(1, UUID.randomUUID());
            insert.setString(2, key);
            assertThat(insert.executeUpdate()).isEqualTo(1);

            assertThat(number(exists)).as("after").isEqualTo(1);
            connection.rollback();
        }
    }

    private static int number(PreparedStatement statement) throws SQLException {
        try (ResultSet rows = statement.executeQuery()) {
            rows.next();
            return rows.getInt(1);
        }
    }

    /** An entry {@code further} places after the head of the car's chain. */
    private static String nextEntry(Car car, int further, String prev) {
        return "insert into journal_entry (chain_id, seq, id, kind, effective_at, recorded_at, recorded_by, body,"
                + " prev_hash, hash) select h.chain_id, h.seq + " + further + ", '" + UUID.randomUUID()
                + "', 'HANDED_OVER', last_recorded_at, h.last_recorded_at, '" + UUID.randomUUID() + "', '{}', " + prev
                + ", '" + NEVER_SEEN + "' from chain_head h where h.chain_id = '" + car.id() + "'";
    }

    private static String handover(Car car, @Nullable String basis, int failedChecks) {
        return "insert into fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, basis, failed_checks)"
                + " select '" + UUID.randomUUID() + "', h.chain_id, h.seq + 1, 'HANDED_OVER', h.last_recorded_at,"
                + " h.last_recorded_at, '" + UUID.randomUUID() + "', "
                + (basis == null ? "null" : "'" + basis + "'") + ", " + failedChecks
                + " from chain_head h where h.chain_id = '" + car.id() + "'";
    }

    /** Runs the statements one after the other, and leaves nothing behind. */
    private void inOneTransaction(String... statements) throws SQLException {
        try (Connection connection = running().connect();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            try {
                for (String sql : statements) {
                    assertThat(statement.executeUpdate(sql)).as(sql).isEqualTo(1);
                }
            } finally {
                connection.rollback();
            }
        }
    }
}
