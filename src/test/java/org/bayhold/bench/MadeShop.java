package org.bayhold.bench;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.bayhold.support.AnyPostgres;

/**
 * A shop from a seed, straight into the tables: each car comes four times, gets two parts and the revision for them, and
 * leaves. Of a hundred visits three end with an exception, two are followed by a change on the road, two by an install
 * that is recorded late, one by a differing ECU check, and one in two hundred by a report that is struck out. One revision
 * in a hundred is withdrawn after the last visit. The rows lie in the order of visits, not of cars, as in a real shop.
 * Journal entries are made only where the audit reads them.
 */
final class MadeShop {
    static final int VISITS = 4;
    static final Instant BEGIN = Instant.parse("2024-01-01T08:00:00Z");
    static final Instant WITHDRAWN = BEGIN.plus(Duration.ofDays(500));

    private static final int HARDWARE = 50;
    private static final int REVISIONS_EACH = 40;
    private static final int REVISIONS = HARDWARE * REVISIONS_EACH;
    private static final String ANYBODY = "00000000-0000-7000-8000-0000000000aa";

    private final SplittableRandom random = new SplittableRandom(26);
    private final Tables tables;
    private final int cars;
    private final Visit.Car[] states;

    private MadeShop(Tables tables, int cars) {
        this.tables = tables;
        this.cars = cars;
        this.states = new Visit.Car[cars];
    }

    /** @return the number of facts */
    static long make(AnyPostgres.Database database, int handoffs) throws SQLException {
        int cars = handoffs / VISITS;
        List<String> indexes = dropIndexes(database);
        long facts;
        try (Tables tables = new Tables(database)) {
            MadeShop shop = new MadeShop(tables, cars);
            shop.catalogue();
            for (int visit = 0; visit < VISITS; visit++) {
                for (int car = 0; car < cars; car++) {
                    shop.visit(car, visit);
                }
            }
            shop.withdrawals();
            facts = tables.facts();
        }
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            for (String index : indexes) {
                statement.execute(index);
            }
            statement.execute("vacuum analyze");
        }
        return facts;
    }

    private static List<String> dropIndexes(AnyPostgres.Database database) throws SQLException {
        List<String> made = new ArrayList<>();
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            List<String> names = new ArrayList<>();
            try (var rows = statement.executeQuery("select indexname, indexdef from pg_indexes where tablename in"
                    + " ('fact', 'retune_item') and indexname not in (select conname from pg_constraint)"
                    + " and indexname <> 'retune_item_one_open'")) {
                while (rows.next()) {
                    names.add(rows.getString(1));
                    made.add(rows.getString(2));
                }
            }
            for (String name : names) {
                statement.execute("drop index " + name);
            }
        }
        return made;
    }

    private static UUID id(int kind, long number) {
        return new UUID(0x7000L | ((long) kind << 48), 0x8000_0000_0000_0000L | number);
    }

    static UUID vehicle(int car) {
        return id(1, car);
    }

    private static UUID revision(int number) {
        return id(2, number);
    }

    private static UUID part(int number) {
        return id(3, number);
    }

    /** Part 0 is a downpipe, 1 a turbocharger; then an intake and a set of injectors for each revision. */
    private static UUID intake(int revision) {
        return part(2 + 2 * revision);
    }

    private static UUID injectors(int revision) {
        return part(3 + 2 * revision);
    }

    private void catalogue() throws SQLException {
        tables.part(part(0), "DOWNPIPE");
        tables.part(part(1), "TURBOCHARGER");
        for (int revision = 0; revision < REVISIONS; revision++) {
            tables.part(intake(revision), "AIR_INTAKE");
            tables.part(injectors(revision), "INJECTORS");
            boolean withdrawn = revision % 100 == 99;
            tables.revision(
                    revision(revision),
                    revision,
                    "HW-" + revision / REVISIONS_EACH,
                    intake(revision),
                    injectors(revision),
                    BEGIN,
                    withdrawn ? WITHDRAWN : null);
        }
        for (int car = 0; car < cars; car++) {
            states[car] = new Visit.Car();
            tables.car(vehicle(car), car, "HW-" + car % HARDWARE, BEGIN);
        }
    }

    private void visit(int car, int visit) throws SQLException {
        Visit.Car state = states[car];
        Instant at = BEGIN.plus(Duration.ofDays(1 + 120L * visit)).plusSeconds(random.nextInt(40 * 86_400));
        Visit work = new Visit(tables, vehicle(car), state, at);
        boolean exception = random.nextInt(100) < 3;
        int revision;
        do {
            revision = car % HARDWARE * REVISIONS_EACH + random.nextInt(REVISIONS_EACH);
        } while (revision == state.revision);
        Instant arrived = work.next();
        tables.fact(work.stamp(arrived), "ARRIVED", null, null, null, null, null);
        Instant changed = work.next();
        UUID change = work.change(changed, changed, "AIR_INTAKE", intake(revision), "SHOP");
        work.doubt("PART_CHANGED", change, changed, changed);
        Instant more = work.next();
        UUID second = work.change(more, more, "INJECTORS", injectors(revision), "SHOP");
        work.doubt("PART_CHANGED", second, more, more);
        if (state.hasDownpipe) {
            Instant back = work.next();
            UUID removal = work.change(back, back, "DOWNPIPE", null, "SHOP");
            work.doubt("PART_CHANGED", removal, back, back);
            state.hasDownpipe = false;
        }
        if (exception) {
            work.exception(state.revision >= 0);
        } else {
            work.flash(revision(revision), revision);
            state.revision = revision;
            work.leave();
            afterwards(work, changed, revision);
        }
        state.last = work.now();
    }

    private void afterwards(Visit work, Instant changed, int revision) throws SQLException {
        int chance = random.nextInt(200);
        Instant at = work.later(Duration.ofHours(random.nextInt(24, 24 * 60)));
        if (chance < 4) {
            work.doubt("PART_CHANGED", work.change(at, at, "DOWNPIPE", part(0), "CUSTOMER_REPORTED"), at, at);
            work.state().hasDownpipe = true;
        } else if (chance < 8) {
            work.doubt("LATE_RECORD", work.change(changed, at, "DOWNPIPE", part(0), "SHOP"), changed, at);
            work.state().hasDownpipe = true;
        } else if (chance < 10) {
            work.doubt("READ_BACK_DIFFERS", work.readBack(at, (revision + 1) % REVISIONS, "CUSTOMER_REPORTED"), at, at);
        } else if (chance < 11) {
            UUID wrong = work.change(at, at, "TURBOCHARGER", part(1), "CUSTOMER_REPORTED");
            work.doubt("PART_CHANGED", wrong, at, at);
            work.strikeOut(wrong);
        }
    }

    private void withdrawals() throws SQLException {
        for (int car = 0; car < cars; car++) {
            Visit.Car state = states[car];
            if (state.revision >= 0 && state.revision % 100 == 99) {
                Visit work = new Visit(tables, vehicle(car), state, WITHDRAWN.plusSeconds(60));
                Instant told = work.next();
                work.doubt("REVISION_WITHDRAWN", revision(state.revision), WITHDRAWN, told);
            }
            tables.head(vehicle(car), state.seq, state.openItem, state.last, ANYBODY);
        }
    }
}
