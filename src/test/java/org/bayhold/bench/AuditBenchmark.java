package org.bayhold.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.bayhold.audit.AuditQuestion;
import org.bayhold.audit.AuditedHandoff;
import org.bayhold.audit.HandoffAudit;
import org.bayhold.gate.Check;
import org.bayhold.support.AnyPostgres;
import org.bayhold.support.Api;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Role;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The audit of a made shop beside SQL that was written by hand for what that shop holds: docs/benchmarks.md. */
class AuditBenchmark {
    private static final String SIZES = System.getProperty("bayhold.bench.handoffs", "10000,100000");
    /** Up to here every answer is compared row by row and in every form; beyond, once and by its sum. */
    private static final int FEW = 100_000;

    private static final int ROUNDS = Integer.getInteger("bayhold.bench.rounds", 3);

    /** One handover in the words of both. */
    private record Said(
            UUID id,
            long failedThen,
            long failedNow,
            long findings,
            @Nullable Instant unmatchedSince,
            @Nullable Instant matchedAgainAt,
            @Nullable Instant stillSince,
            @Nullable Instant returnedAt) {}

    /** Seconds to the first row and to the last one. */
    private record Took(double first, double whole, long rows, long hash) {}

    @Test
    void theAuditBesideHandWrittenSql() throws SQLException {
        for (String size : SIZES.split(",")) {
            measure(Integer.parseInt(size.strip()));
        }
    }

    private static void measure(int handoffs) throws SQLException {
        FreshBayhold.Store store = FreshBayhold.Store.postgres(AuditBenchmark.class);
        AnyPostgres.Database database = new AnyPostgres.Database(store.url(), store.user(), store.password());
        try (FreshBayhold bayhold = FreshBayhold.withoutCars(store)) {
            long begin = System.nanoTime();
            long facts = MadeShop.make(database, handoffs);
            say(
                    "%,d handovers, %,d cars, %,d facts; made in %.0f s",
                    handoffs, handoffs / MadeShop.VISITS, facts, since(begin));
            HandoffAudit audit = bayhold.bean(HandoffAudit.class);
            if (handoffs <= FEW) {
                sameAnswer(audit, database);
            }
            if (Boolean.getBoolean("bayhold.bench.plan")) {
                plan(database);
            }
            for (int round = 1; round <= (handoffs > FEW ? 1 : ROUNDS); round++) {
                Took sql = sql(database, null);
                Took ours = audit(audit, null);
                say(
                        "round %d: audit first %.2f s, whole %.1f s | SQL first %.2f s, whole %.1f s | ratio %.2f",
                        round, ours.first(), ours.whole(), sql.first(), sql.whole(), ours.whole() / sql.whole());
                assertThat(ours.rows()).isEqualTo(sql.rows()).isEqualTo(handoffs);
                assertThat(ours.hash()).as("the same answer").isEqualTo(sql.hash());
            }
            overHttp(bayhold, "text/csv");
            if (handoffs <= FEW) {
                overHttp(bayhold, "application/json");
                overHttp(bayhold, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
            }
            long exposed = System.nanoTime();
            int cars = audit.list(AuditQuestion.stillUnmatched()).size();
            say("still unmatched: %,d cars in %.1f s", cars, since(exposed));
        }
    }

    private static void sameAnswer(HandoffAudit audit, AnyPostgres.Database database) throws SQLException {
        Map<UUID, Said> ours = new TreeMap<>();
        Map<UUID, Said> theirs = new TreeMap<>();
        Took ignored = audit(audit, ours);
        Took ignoredToo = sql(database, theirs);
        List<String> different = new ArrayList<>();
        ours.forEach((id, said) -> {
            if (!said.equals(theirs.get(id))) {
                different.add(said + "\n   " + theirs.get(id));
            }
        });
        assertThat(different.stream().limit(10))
                .as("%d differ", different.size())
                .isEmpty();
        assertThat(theirs).hasSameSizeAs(ours);
        Map<Long, Integer> found = new TreeMap<>();
        ours.values().forEach(said -> found.merge(said.findings(), 1, Integer::sum));
        say("findings (bits): %s", found);
    }

    private static Took audit(HandoffAudit audit, @Nullable Map<UUID, Said> all) {
        long begin = System.nanoTime();
        long[] first = {0};
        long[] rows = {0, 0};
        audit.tell(AuditQuestion.ALL, row -> {
            if (first[0] == 0) {
                first[0] = System.nanoTime();
            }
            if (row.knownThen() != row.decidedThen() || !row.failedKnownThen().equals(row.failedThen())) {
                throw new AssertionError("decided and replayed differ: " + row);
            }
            Said said = said(row);
            rows[0]++;
            rows[1] += said.hashCode();
            if (all != null) {
                all.put(said.id(), said);
            }
        });
        return new Took((first[0] - begin) / 1e9, since(begin), rows[0], rows[1]);
    }

    private static Said said(AuditedHandoff row) {
        return new Said(
                row.handoffId(),
                checks(row.failedKnownThen()),
                checks(row.failedKnownNow()),
                bits(row.findings()),
                row.unmatchedSince(),
                row.matchedAgainAt(),
                row.stillUnmatchedSince(),
                row.returnedAt());
    }

    private static long checks(List<Check> checks) {
        return bits(checks);
    }

    private static long bits(Collection<? extends Enum<?>> codes) {
        return codes.stream().mapToLong(code -> 1L << code.ordinal()).sum();
    }

    private static Took sql(AnyPostgres.Database database, @Nullable Map<UUID, Said> all) throws SQLException {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            prepare(statement);
            statement.setFetchSize(1_000);
            long begin = System.nanoTime();
            long first = 0;
            long count = 0;
            long hash = 0;
            List<String> steps = steps();
            for (String step : steps.subList(0, steps.size() - 1)) {
                statement.execute(step);
            }
            try (ResultSet rows = statement.executeQuery(steps.get(steps.size() - 1))) {
                while (rows.next()) {
                    if (first == 0) {
                        first = System.nanoTime();
                    }
                    Said said = new Said(
                            rows.getObject(1, UUID.class),
                            rows.getLong(3),
                            rows.getLong(4),
                            rows.getLong(5),
                            time(rows.getTimestamp(6)),
                            time(rows.getTimestamp(7)),
                            time(rows.getTimestamp(8)),
                            time(rows.getTimestamp(9)));
                    count++;
                    hash += said.hashCode();
                    if (all != null) {
                        all.put(said.id(), said);
                    }
                }
            }
            return new Took((first - begin) / 1e9, since(begin), count, hash);
        }
    }

    /** How the database goes about it, for whoever wants to write it better. */
    private static void plan(AnyPostgres.Database database) throws SQLException {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            prepare(statement);
            for (String step : steps()) {
                boolean plans = step.startsWith("create temp table") || step.startsWith("with");
                long begin = System.nanoTime();
                if (plans) {
                    try (ResultSet lines = statement.executeQuery("explain (analyze, costs off) " + step)) {
                        while (lines.next()) {
                            System.out.println(lines.getString(1));
                        }
                    }
                    say("%.1f s: %s", since(begin), step.lines().findFirst().orElse(""));
                    if (step.startsWith("create")) {
                        statement.execute("drop table if exists " + step.split(" ")[3]);
                        statement.execute(step);
                    }
                } else {
                    statement.execute(step);
                }
            }
        }
    }

    private static void prepare(Statement statement) throws SQLException {
        statement.execute("set work_mem = '512MB'");
        statement.execute("set hash_mem_multiplier = 2");
        statement.execute("set jit = off");
    }

    private static @Nullable Instant time(@Nullable Timestamp time) {
        return time == null ? null : time.toInstant();
    }

    /** All of them fill tables of the session but the last, which asks. */
    private static List<String> steps() {
        try (InputStream sql = AuditBenchmark.class.getResourceAsStream("audit.sql")) {
            String text = new String(Objects.requireNonNull(sql).readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(text.replaceAll("(?m)^\\s*--.*$", "").split(";"))
                    .map(String::strip)
                    .filter(step -> !step.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole way, with the most that the heap held beyond what it held before. */
    private static void overHttp(FreshBayhold bayhold, String form) {
        Api auditor = bayhold.shop().as(Role.AUDITOR).withHeader("Accept", form);
        var heap = ManagementFactory.getMemoryMXBean();
        System.gc();
        long idle = heap.getHeapMemoryUsage().getUsed();
        long begin = System.nanoTime();
        double first = 0;
        long bytes = 0;
        HeapWatch watch = new HeapWatch();
        try (watch;
                InputStream body = auditor.stream("/audit/handoffs")) {
            byte[] buffer = new byte[1 << 16];
            for (int read = body.read(buffer); read >= 0; read = body.read(buffer)) {
                first = bytes == 0 ? since(begin) : first;
                bytes += read;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        double whole = since(begin);
        say(
                "HTTP %s: first byte %.2f s, whole %.1f s, %,d bytes; live heap %+,d MB at most",
                form, first, whole, bytes, (watch.most() - idle) >> 20);
    }

    private static double since(long begin) {
        return (System.nanoTime() - begin) / 1e9;
    }

    private static void say(String format, Object... values) {
        System.out.println("BENCH " + String.format(Locale.ROOT, format, values));
    }
}
