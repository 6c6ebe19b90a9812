package org.bayhold.audit;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.identity.Caller;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.springframework.stereotype.Component;

/** Whom to call: the cars that are on the road now without a matching calibration. */
@Component
class Exposures {
    private static final int VIEWED_AT_ONCE = 500;

    private final HandoffAudit audit;
    private final Vehicles vehicles;
    private final Clock clock;

    Exposures(HandoffAudit audit, Vehicles vehicles, Clock clock) {
        this.audit = audit;
        this.vehicles = vehicles;
        this.clock = clock;
    }

    /** A car, with its last handover and the time since which it has been without a match. */
    private record Exposed(AuditedHandoff last, Instant since) {}

    /** Longest first, with the owner's contact where the caller may see it. */
    List<Exposure> list(Caller caller) {
        Map<UUID, Exposed> cars = new LinkedHashMap<>();
        // a car may have left twice without coming back in between: the first time began it, the last one is told
        for (AuditedHandoff row : audit.list(AuditQuestion.stillUnmatched())) {
            Instant since = Objects.requireNonNull(row.stillUnmatchedSince());
            cars.merge(
                    row.vehicle().id(),
                    new Exposed(row, since),
                    (earlier, later) -> new Exposed(later.last(), earlier.since()));
        }
        List<Exposed> exposed = cars.values().stream()
                .sorted(Comparator.comparing(Exposed::since)
                        .thenComparing(car -> car.last().vehicle().id()))
                .toList();
        Instant now = clock.instant();
        List<Exposure> list = new ArrayList<>();
        for (int from = 0; from < exposed.size(); from += VIEWED_AT_ONCE) {
            List<Exposed> some = exposed.subList(from, Math.min(exposed.size(), from + VIEWED_AT_ONCE));
            Map<UUID, VehicleView> views = vehicles.views(
                    some.stream().map(car -> car.last().vehicle().id()).toList(), caller);
            some.forEach(car -> list.add(exposure(car, views, now)));
        }
        return list;
    }

    private static Exposure exposure(Exposed car, Map<UUID, VehicleView> views, Instant now) {
        AuditedHandoff last = car.last();
        return new Exposure(
                Objects.requireNonNull(views.get(last.vehicle().id())),
                last.handoffId(),
                last.handedOffAt(),
                last.handedOffBy(),
                last.findings(),
                car.since(),
                AuditRun.days(Duration.between(car.since(), now)));
    }
}
