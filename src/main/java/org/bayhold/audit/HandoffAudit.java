package org.bayhold.audit;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.bayhold.buildsheet.ManyCars;
import org.bayhold.gate.Replays;
import org.bayhold.identity.People;
import org.bayhold.journal.Snapshots;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The audit of handovers, car by car. A few hundred cars are read in a handful of questions and judged while the next ones
 * are read: no more than three such lots are in memory at once, however many rows there are. docs/decisions/0011.
 */
@Component
public class HandoffAudit {
    /** What a write may take and a little more; until then another one may still become known for the same moment. */
    private static final long SETTLED_AFTER_SECONDS = 20;

    private static final long TAKEN_AS_NOW_SECONDS = 60;

    private final Snapshots snapshots;
    private final CarsHandedOver cars;
    private final ManyCars manyCars;
    private final Replays replays;
    private final People people;
    private final Clock clock;

    HandoffAudit(
            Snapshots snapshots, CarsHandedOver cars, ManyCars manyCars, Replays replays, People people, Clock clock) {
        this.snapshots = snapshots;
        this.cars = cars;
        this.manyCars = manyCars;
        this.replays = replays;
        this.people = people;
        this.clock = clock;
    }

    /**
     * An audit that can be answered.
     *
     * @param provisional it knows moments so new that more may yet become known of them
     */
    record Ready(
            AuditQuestion question,
            CarsHandedOver.Search search,
            CarsHandedOver.@Nullable Place after,
            boolean provisional) {}

    /** @throws Refusal INVALID for what makes no sense, before anything is told */
    Ready ready(AuditQuestion question) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Instant asked = question.knownAt();
        Instant from = question.from();
        notInTheFuture("knownAt", asked, now);
        notInTheFuture("from", from, now);
        if (from != null && question.to() != null && from.isAfter(question.to())) {
            throw new Refusal(
                    Code.INVALID,
                    List.of(
                            new Refusal.Reason("from", "audit.period-ends-first", List.of()),
                            new Refusal.Reason("to", "audit.period-ends-first", List.of())));
        }
        if (question.site() != null) {
            throw Refusal.invalid("site", "audit.no-site", question.site());
        }
        UUID by = question.person() == null ? null : person(question.person());
        CarsHandedOver.Place after = question.after() == null ? null : place(question.after());
        Instant knownAt = asked == null || asked.isAfter(now) ? now : asked;
        boolean inDoubt = Boolean.TRUE.equals(question.unmatched()) && asked == null;
        return new Ready(
                question,
                new CarsHandedOver.Search(from, question.to(), by, knownAt, inDoubt),
                after,
                knownAt.isAfter(now.minusSeconds(SETTLED_AFTER_SECONDS)));
    }

    private static void notInTheFuture(String field, @Nullable Instant asked, Instant now) {
        if (asked != null && asked.isAfter(now.plusSeconds(TAKEN_AS_NOW_SECONDS))) {
            throw Refusal.invalid(field, "time.in-future", asked, now);
        }
    }

    private UUID person(String name) {
        return people.named(name).orElseThrow(() -> Refusal.invalid("person", "audit.no-person", name));
    }

    private CarsHandedOver.Place place(UUID handoffId) {
        return cars.place(handoffId).orElseThrow(() -> Refusal.invalid("after", "audit.no-handoff"));
    }

    /** Tells every handover that is asked for, in the order of the cars' ids and for each car of its handovers. */
    void tell(Ready ready, AuditRows rows) {
        ExecutorService judge = Executors.newSingleThreadExecutor();
        try {
            boolean ignored = snapshots.read(() -> {
                tell(new AuditRun(ready, cars, manyCars, replays, people), judge, new Limited(ready, rows));
                return true;
            });
        } finally {
            judge.shutdownNow();
        }
    }

    private static void tell(AuditRun run, ExecutorService judge, Limited rows) {
        AuditRun.Lot first = run.read();
        if (first == null) {
            return;
        }
        rows.add(run.judge(first));
        CompletableFuture<List<AuditedHandoff>> ahead = CompletableFuture.completedFuture(List.of());
        AuditRun.Lot lot = rows.areWanted() ? run.read() : null;
        while (lot != null) {
            AuditRun.Lot next = lot;
            CompletableFuture<List<AuditedHandoff>> judged =
                    CompletableFuture.supplyAsync(() -> run.judge(next), judge);
            rows.add(of(ahead));
            ahead = judged;
            lot = rows.areWanted() ? run.read() : null;
        }
        rows.add(of(ahead));
    }

    private static List<AuditedHandoff> of(CompletableFuture<List<AuditedHandoff>> judged) {
        try {
            return judged.join();
        } catch (CompletionException | CancellationException e) {
            throw new IllegalStateException("a lot of cars could not be judged", e);
        }
    }

    /** Tells every handover that is asked for, however many there are. */
    public void tell(AuditQuestion question, AuditRows rows) {
        tell(ready(question), rows);
    }

    /** The whole answer, for questions with few rows. */
    public List<AuditedHandoff> list(AuditQuestion question) {
        List<AuditedHandoff> list = new ArrayList<>();
        tell(ready(question), list::add);
        return list;
    }

    /** Passes on as many rows as were asked for. */
    private static final class Limited {
        private final AuditRows rows;
        private int left;

        Limited(Ready ready, AuditRows rows) {
            Integer limit = ready.question().limit();
            this.rows = rows;
            this.left = limit == null ? Integer.MAX_VALUE : limit;
        }

        boolean areWanted() {
            return left > 0;
        }

        void add(List<AuditedHandoff> lot) {
            int most = Math.min(left, lot.size());
            lot.subList(0, most).forEach(rows::add);
            left -= most;
            rows.flush();
        }
    }
}
