package org.bayhold.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.Facts;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;

/**
 * The audit of all handovers of an invented shop on PostgreSQL, beside one hand-written SQL statement that answers the same for
 * that one shop alone; both in one run, as a ratio. Not part of the ordinary tests:
 * {@code mvn test -Dtest=AuditBenchmark -Dbayhold.bench.cars=2500,25000}. docs/benchmarks.md has what came of it.
 */
class AuditBenchmark {
    private static final List<Integer> SIZES = java.util.Arrays.stream(
                    System.getProperty("bayhold.bench.cars", "2500,25000").split(","))
            .map(Integer::valueOf)
            .toList();
    private static final int RUNS = Integer.getInteger("bayhold.bench.runs", 3);

    /** How long one answer took: to its first row, and to its end. */
    private record Run(Duration first, Duration whole, long rows, long unmatched) {}

    @Test
    void beside() throws Exception {
        for (int cars : SIZES) {
            FreshBayhold.Store store = FreshBayhold.Store.postgres(AuditBenchmark.class);
            try (FreshBayhold bayhold = FreshBayhold.withoutCars(store)) {
                Instant start = Instant.now();
                fill(bayhold.shop(), store, cars);
                System.out.printf(
                        "%d cars filled in %d s%n",
                        cars, Duration.between(start, Instant.now()).toSeconds());
                HandoffAudit audit = bayhold.bean(HandoffAudit.class);
                for (int i = 1; i <= RUNS; i++) {
                    Run byHand = byHand(store);
                    Run ours = ours(audit);
                    assertThat(ours.rows()).isEqualTo(byHand.rows());
                    assertThat(ours.unmatched()).isEqualTo(byHand.unmatched());
                    System.out.printf(
                            "AUDIT %d handovers, run %d: by hand %d ms, first row %d ms; ours %d ms, first row %d ms;"
                                    + " ratio %.2f; %d unmatched%n",
                            ours.rows(),
                            i,
                            byHand.whole().toMillis(),
                            byHand.first().toMillis(),
                            ours.whole().toMillis(),
                            ours.first().toMillis(),
                            (double) ours.whole().toMillis() / byHand.whole().toMillis(),
                            ours.unmatched());
                }
            }
        }
    }

    /** As CSV into nowhere. */
    private static Run ours(HandoffAudit audit) throws IOException {
        long start = System.nanoTime();
        Counting counting = new Counting();
        try (CsvRows csv = new CsvRows(OutputStream.nullOutputStream())) {
            audit.tell(audit.ready(AuditQuestion.ALL), row -> {
                counting.add(row, start);
                csv.add(row);
            });
        }
        return new Run(counting.first, Duration.ofNanos(System.nanoTime() - start), counting.rows, counting.unmatched);
    }

    private static final class Counting {
        private Duration first = Duration.ZERO;
        private long rows;
        private long unmatched;

        void add(AuditedHandoff row, long start) {
            if (rows++ == 0) {
                first = Duration.ofNanos(System.nanoTime() - start);
            }
            unmatched += row.unmatchedSince() == null ? 0 : 1;
        }
    }

    private static Run byHand(FreshBayhold.Store store) throws SQLException {
        try (Connection connection = store.connect()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                statement.execute("set work_mem = '256MB'");
                statement.setFetchSize(1_000);
                long start = System.nanoTime();
                Duration first = Duration.ZERO;
                long rows = 0;
                long unmatched = 0;
                long characters = 0;
                try (ResultSet row = statement.executeQuery(read("bench/audit.sql"))) {
                    while (row.next()) {
                        if (rows++ == 0) {
                            first = Duration.ofNanos(System.nanoTime() - start);
                        }
                        for (int column = 1; column <= 16; column++) {
                            characters += String.valueOf(row.getString(column)).length();
                        }
                        unmatched += row.getString(11) == null ? 0 : 1;
                    }
                }
                assertThat(characters).isPositive();
                return new Run(first, Duration.ofNanos(System.nanoTime() - start), rows, unmatched);
            }
        }
    }

    private static void fill(Shop shop, FreshBayhold.Store store, int cars) throws SQLException {
        List<Part> parts = new ArrayList<>();
        List<Calibration> calibrations = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Part part = shop.aPartFor("AIR_INTAKE");
            parts.add(part);
            calibrations.add(shop.issues(RevisionDraft.forEcu("BENCH-HW").covers(part)));
        }
        Car pattern = shop.registers(aCar());
        pattern.fits(parts.get(0));
        String exception =
                pattern.asksToLeaveByException(Facts.exception()).is(201).id();
        try (Connection connection = store.connect();
                Statement statement = connection.createStatement()) {
            String body = text(statement, "select body from journal_entry where id = '" + exception + "'");
            String user = text(statement, "select recorded_by from journal_entry where id = '" + exception + "'");
            statement.execute("set session_replication_role = replica");
            statement.execute("update calibration set recorded_at = '2024-12-01 00:00Z'");
            statement.execute(read("bench/shop.sql")
                    .replace(":cars", Integer.toString(cars))
                    .replace(":user", "'" + user + "'::uuid")
                    .replace(":parts", array(parts, Part::id, "uuid"))
                    .replace(":calibrations", array(calibrations, Calibration::id, "uuid"))
                    .replace(":calids", array(calibrations, Calibration::calid, "text"))
                    .replace(":cvns", array(calibrations, Calibration::cvn, "text"))
                    .replace(":bodyId", "'" + exception + "'")
                    .replace(":body", "'" + body.replace("'", "''") + "'"));
        }
    }

    private static <T> String array(List<T> of, Function<T, String> value, String type) {
        return of.stream().map(value).collect(Collectors.joining("','", "array['", "']::" + type + "[]"));
    }

    private static String text(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            assertThat(row.next()).isTrue();
            return row.getString(1);
        }
    }

    private static String read(String resource) {
        try (InputStream in = AuditBenchmark.class.getClassLoader().getResourceAsStream(resource)) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
