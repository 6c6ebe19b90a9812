package org.bayhold.audit;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.journal.Snapshots;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Which cars an audit has to read. */
@Component
class CarsHandedOver {
    private static final String HANDED_OVER = " from fact f where f.kind = 'HANDED_OVER'";
    /** Whatever leaves a car without a matching calibration opens an item; what other chains say is followed up. */
    private static final String IN_DOUBT = " and exists (select 1 from chain_head h"
            + " where h.chain_id = f.vehicle_id and h.open_item_id is not null)";

    private final Snapshots snapshots;

    CarsHandedOver(Snapshots snapshots) {
        this.snapshots = snapshots;
    }

    /** Where a handover stands in the order of the audit. */
    record Place(UUID vehicleId, Instant at, long seq) {}

    /**
     * What narrows the cars down.
     *
     * @param inDoubt only cars that may now be without a matching calibration
     */
    record Search(
            @Nullable Instant from,
            @Nullable Instant to,
            @Nullable UUID by,
            Instant knownAt,
            boolean inDoubt) {}

    Optional<Place> place(UUID handoffId) {
        return snapshots
                .rows(
                        "select f.vehicle_id, f.effective_at, f.seq" + HANDED_OVER + " and f.id = :id",
                        Map.of("id", handoffId),
                        row -> new Place(row.id(1), row.time(2), row.number(3)))
                .stream()
                .findFirst();
    }

    /** No record of another chain waits to be followed up, so that every car in doubt has its item. */
    boolean areFollowedUp() {
        return snapshots
                .rows("select 1 from follow_up u where u.done_at is null", Map.of(), row -> row.number(1))
                .isEmpty();
    }

    /**
     * The next cars with a handover that is searched for, in the order of their ids.
     *
     * @param from the id to begin with
     * @param itself whether that car is among them
     */
    List<UUID> next(Search search, UUID from, boolean itself, int most) {
        StringBuilder sql = new StringBuilder("select distinct f.vehicle_id").append(HANDED_OVER);
        Map<String, Object> values = new HashMap<>();
        with(sql, values, " and f.vehicle_id " + (itself ? ">=" : ">") + " :car", "car", from);
        with(sql, values, " and f.recorded_at <= :knownAt", "knownAt", time(search.knownAt()));
        with(sql, values, " and f.effective_at >= :from", "from", time(search.from()));
        with(sql, values, " and f.effective_at < :to", "to", time(search.to()));
        with(sql, values, " and f.recorded_by = :by", "by", search.by());
        if (search.inDoubt()) {
            sql.append(IN_DOUBT);
        }
        sql.append(" order by f.vehicle_id limit ").append(most);
        return snapshots.rows(sql.toString(), values, row -> row.id(1));
    }

    private static void with(
            StringBuilder sql, Map<String, Object> values, String condition, String name, @Nullable Object value) {
        if (value != null) {
            sql.append(condition);
            values.put(name, value);
        }
    }

    private static @Nullable OffsetDateTime time(@Nullable Instant time) {
        return time == null ? null : time.atOffset(ZoneOffset.UTC);
    }
}
