package org.bayhold.bench;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One visit while it is written down. */
final class Visit {
    /** What a car brings along to its next visit. */
    static final class Car {
        int revision = -1;
        long seq = 1;

        @Nullable UUID openItem;

        boolean hasDownpipe;
        Instant last = MadeShop.BEGIN;
    }

    private final Tables tables;
    private final UUID vehicle;
    private final Car state;
    private Instant now;

    Visit(Tables tables, UUID vehicle, Car state, Instant begin) {
        this.tables = tables;
        this.vehicle = vehicle;
        this.state = state;
        this.now = begin;
    }

    Car state() {
        return state;
    }

    Instant now() {
        return now;
    }

    Instant next() {
        return later(Duration.ofMinutes(17));
    }

    Instant later(Duration after) {
        now = now.plus(after);
        return now;
    }

    Tables.Stamp stamp(Instant at) {
        return new Tables.Stamp(tables.nextId(), vehicle, ++state.seq, at, now);
    }

    UUID change(Instant at, Instant recordedAt, String category, @Nullable UUID part, String source)
            throws SQLException {
        now = recordedAt;
        Tables.Stamp stamp = stamp(at);
        tables.change(stamp, category, part == null ? "REFIT_FACTORY" : "FIT", part, source);
        return stamp.id();
    }

    UUID readBack(Instant at, int revision, String source) throws SQLException {
        now = at;
        Tables.Stamp stamp = stamp(at);
        tables.readBack(stamp, revision, source);
        return stamp.id();
    }

    /** Opens an item, or joins the open one. */
    void doubt(String code, UUID record, Instant since, Instant recordedAt) throws SQLException {
        now = recordedAt;
        UUID item = state.openItem;
        boolean opens = item == null;
        if (item == null) {
            item = tables.nextId();
            state.openItem = item;
        }
        tables.doubt(stamp(recordedAt), item, opens, code, record, since);
    }

    void flash(UUID revision, int number) throws SQLException {
        tables.fact(stamp(next()), "FLASHED", revision, "COMPLETED", "SHOP", null, null);
        readBack(next(), number, "SHOP");
        UUID item = Objects.requireNonNull(state.openItem);
        tables.fact(stamp(next()), "CLEARED", null, null, null, item, "FLASHED");
        tables.closed(item, now);
        state.openItem = null;
        tables.fact(stamp(next()), "ACKNOWLEDGED", null, null, null, null, null);
    }

    void leave() throws SQLException {
        tables.handover(stamp(next()), "CLEAR", List.of());
    }

    void exception(boolean wasFlashed) throws SQLException {
        List<String> failed = new ArrayList<>();
        if (!wasFlashed) {
            failed.add("FLASH_COMPLETED");
        }
        failed.add("FLASH_AFTER_LAST_CHANGE");
        if (!wasFlashed) {
            failed.add("CALIBRATION_IN_FORCE");
        }
        failed.addAll(List.of("PARTS_COVERED", "READ_BACK_MATCHES", "RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED"));
        tables.handover(stamp(next()), "EXCEPTION", failed);
    }

    void strikeOut(UUID wrong) throws SQLException {
        UUID item = Objects.requireNonNull(state.openItem);
        tables.fact(stamp(later(Duration.ofHours(20))), "VOIDED", null, null, null, wrong, null);
        tables.fact(stamp(now), "RETUNE_LAPSED", null, null, null, item, null);
        tables.closed(item, now);
        state.openItem = null;
    }
}
