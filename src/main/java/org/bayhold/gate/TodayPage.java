package org.bayhold.gate;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.prediction.Risk;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;

/** The shop's day: which cars are here, what the gate says, and what each waits for. */
@Controller
class TodayPage {
    private static final Duration LEFT_LATELY = Duration.ofDays(7);
    /** A shop with more cars than this at once finds the others by search. */
    private static final int MOST = 60;

    private static final int MOST_GONE = 20;

    private final Vehicles vehicles;
    private final Decisions decisions;
    private final RetuneItems items;
    private final Clock clock;

    TodayPage(Vehicles vehicles, Decisions decisions, RetuneItems items, Clock clock) {
        this.vehicles = vehicles;
        this.decisions = decisions;
        this.items = items;
        this.clock = clock;
    }

    /**
     * One car of the day.
     *
     * @param next null where the gate is CLEAR
     * @param left how it left; null for a car that is here, or that was out before any handover
     * @param promisedAt when its retune is promised
     */
    record Row(
            VehicleView car,
            Instant since,
            Decision.Verdict verdict,
            @Nullable Risk risk,
            @Nullable NextStep next,
            @Nullable Instant promisedAt,
            boolean overdue,
            boolean inShop,
            boolean retuneOpen,
            Fact.@Nullable HandedOver left) {

        /** It is out, and nothing came up since: what the gate would ask before the next handover is nobody's work now. */
        public boolean settled() {
            return !inShop && !retuneOpen;
        }
    }

    @Needs(Act.READ)
    @GetMapping("/today")
    ModelAndView today(Caller caller) {
        Instant now = clock.instant();
        List<Vehicles.Stay> inShop = vehicles.inShop(MOST, caller);
        List<Vehicles.Stay> left = vehicles.leftSince(now.minus(LEFT_LATELY), MOST_GONE, caller);
        Map<UUID, Decision> decided = decisions.ofEach(Stream.concat(inShop.stream(), left.stream())
                .map(stay -> stay.car().id())
                .toList());
        Map<UUID, Instant> promised = items.promised(decided.values().stream()
                .flatMap(decision -> decision.car().openItem().stream())
                .map(CarState.OpenItem::id)
                .toList());
        // what is promised first stands first; the rest as it came in
        List<Row> here = inShop.stream()
                .map(stay -> row(stay, decided, promised, now))
                .sorted(Comparator.comparing(Row::promisedAt, Comparator.nullsLast(Comparator.naturalOrder())))
                .toList();
        List<Row> gone =
                left.stream().map(stay -> row(stay, decided, promised, now)).toList();
        return new ModelAndView("gate/today")
                .addObject("here", here)
                .addObject("gone", gone)
                .addObject("more", here.size() == MOST || gone.size() == MOST_GONE)
                .addObject("now", now);
    }

    private static Row row(Vehicles.Stay stay, Map<UUID, Decision> decided, Map<UUID, Instant> promises, Instant now) {
        Decision decision = Objects.requireNonNull(decided.get(stay.car().id()), "a car is never taken off the record");
        UUID item = decision.car().openItem().map(CarState.OpenItem::id).orElse(null);
        Instant promised = item == null ? null : promises.get(item);
        return new Row(
                stay.car(),
                stay.since(),
                decision.verdict(),
                decision.risk(),
                NextStep.of(decision, item),
                promised,
                promised != null && promised.isBefore(now),
                stay.inShop(),
                item != null,
                lastHandover(decision.car()));
    }

    static Fact.@Nullable HandedOver lastHandover(CarState car) {
        List<Fact.HandedOver> handoffs = car.handoffs();
        return car.stay().inShop() || handoffs.isEmpty() ? null : handoffs.get(handoffs.size() - 1);
    }
}
