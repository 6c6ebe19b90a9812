package org.bayhold.audit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.KnownRecord;
import org.bayhold.buildsheet.ManyCars;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.gate.Check;
import org.bayhold.gate.CheckResult;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Replay;
import org.bayhold.gate.Replays;
import org.bayhold.identity.People;
import org.bayhold.journal.Page;
import org.bayhold.vehicle.KnownCar;
import org.jspecify.annotations.Nullable;

/** One run over the cars that an audit is about: lots of them are read, in order, and each lot is judged by itself. */
final class AuditRun {
    /** Small, so that the first rows are there at once. */
    private static final int FIRST_LOT = 25;

    private static final int LOT = 400;
    private static final BigDecimal DAY = BigDecimal.valueOf(Duration.ofDays(1).toMillis());

    private final HandoffAudit.Ready ready;
    private final CarsHandedOver cars;
    private final boolean inDoubt;
    private final ManyCars.Reader reader;
    private final Replays replays;
    private final Replay gate;
    private final People people;
    private final Map<UUID, String> names = new HashMap<>();
    private @Nullable UUID last;

    AuditRun(HandoffAudit.Ready ready, CarsHandedOver cars, ManyCars manyCars, Replays replays, People people) {
        this.ready = ready;
        this.cars = cars;
        this.inDoubt = ready.search().inDoubt() && cars.areFollowedUp();
        this.reader = manyCars.reader();
        this.replays = replays;
        this.gate = replays.replay();
        this.people = people;
    }

    /**
     * Cars as they were read, with all that is needed to judge them.
     *
     * @param failedThen the checks that failed in the stored decisions, by handover
     * @param names of those who handed over
     */
    record Lot(List<KnownRecord> cars, Map<UUID, List<Check>> failedThen, Map<UUID, String> names) {}

    /** The next cars; null where there are no more. */
    @Nullable Lot read() {
        List<UUID> ids = next();
        if (ids.isEmpty()) {
            return null;
        }
        List<KnownRecord> records = reader.of(ids);
        Set<UUID> exceptions = new HashSet<>();
        Set<UUID> unnamed = new HashSet<>();
        for (KnownRecord car : records) {
            for (Fact fact : car.record().facts()) {
                if (fact instanceof Fact.HandedOver handoff) {
                    Stamp stamp = handoff.stamp();
                    if (handoff.failedChecks() > 0) {
                        exceptions.add(stamp.id());
                    }
                    if (!names.containsKey(stamp.by())) {
                        unnamed.add(stamp.by());
                    }
                }
            }
        }
        if (!unnamed.isEmpty()) {
            names.putAll(people.names(unnamed));
        }
        return new Lot(records, replays.failedThen(exceptions), Map.copyOf(names));
    }

    private List<UUID> next() {
        CarsHandedOver.Search asked = ready.search();
        CarsHandedOver.Search search =
                new CarsHandedOver.Search(asked.from(), asked.to(), asked.by(), asked.knownAt(), inDoubt);
        CarsHandedOver.Place after = ready.after();
        UUID before = last;
        List<UUID> ids = before != null
                ? cars.next(search, before, false, LOT)
                : cars.next(search, after == null ? Page.after(null) : after.vehicleId(), after != null, FIRST_LOT);
        if (!ids.isEmpty()) {
            last = ids.get(ids.size() - 1);
        }
        return ids;
    }

    /** The rows that are asked for; touches nothing but its arguments, and so may run beside the reading. */
    List<AuditedHandoff> judge(Lot lot) {
        List<AuditedHandoff> rows = new ArrayList<>();
        for (KnownRecord car : lot.cars()) {
            for (Judged judged : Judging.of(car.record(), gate, ready.search().knownAt())) {
                if (isAskedFor(judged.handoff().stamp())) {
                    AuditedHandoff row = row(car.car(), judged, lot);
                    if (ready.question().wants(row)) {
                        rows.add(row);
                    }
                }
            }
        }
        return rows;
    }

    private boolean isAskedFor(Stamp stamp) {
        CarsHandedOver.Search search = ready.search();
        CarsHandedOver.Place after = ready.after();
        Instant at = stamp.effectiveAt();
        return (search.from() == null || !at.isBefore(search.from()))
                && (search.to() == null || at.isBefore(search.to()))
                && (search.by() == null || search.by().equals(stamp.by()))
                && (after == null
                        || !after.vehicleId().equals(stamp.vehicleId())
                        || at.isAfter(after.at())
                        || (at.equals(after.at()) && stamp.seq() > after.seq()));
    }

    private static AuditedHandoff row(KnownCar car, Judged judged, Lot lot) {
        Fact.HandedOver handoff = judged.handoff();
        Stamp stamp = handoff.stamp();
        boolean clear = handoff.basis() == Fact.HandoffBasis.CLEAR;
        return new AuditedHandoff(
                stamp.id(),
                new AuditedHandoff.Vehicle(
                        stamp.vehicleId(), car.vin(), car.frameNumber(), car.plate(), car.description()),
                stamp.effectiveAt(),
                stamp.recordedAt(),
                handoff.basis(),
                clear ? Decision.Verdict.CLEAR : Decision.Verdict.HOLD,
                lot.failedThen().getOrDefault(stamp.id(), List.of()),
                judged.knownThen().verdict(),
                codes(judged.knownThen()),
                judged.knownNow().verdict(),
                codes(judged.knownNow()),
                judged.findings().isEmpty() ? List.of() : List.copyOf(EnumSet.copyOf(judged.findings())),
                judged.unmatchedSince(),
                judged.matchedAgainAt(),
                days(judged.unmatchedFor()),
                judged.stillSince(),
                judged.returnedAt(),
                judged.voided(),
                lot.names().getOrDefault(stamp.by(), stamp.by().toString()));
    }

    private static List<Check> codes(Decision decision) {
        return decision.failed().stream().map(CheckResult::code).toList();
    }

    static BigDecimal days(Duration duration) {
        BigDecimal days = BigDecimal.valueOf(duration.toMillis())
                .divide(DAY, 2, RoundingMode.HALF_UP)
                .stripTrailingZeros();
        return days.scale() < 0 ? days.setScale(0) : days;
    }
}
