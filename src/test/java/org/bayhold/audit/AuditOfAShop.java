package org.bayhold.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.gate.CheckResult;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Replays;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.Facts;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/**
 * Histories that went through the server, with late facts, strikings-out, withdrawals, corrections, exceptions and another
 * policy. The audit, which reads typed columns of many cars at once, must say what a fold of each car's journal says; and
 * the record as known then must give the decision of then (rules 13 and 14).
 */
public abstract class AuditOfAShop implements OnADatabase {
    private static final int CARS = 24;
    private static final int ACTS = 14;
    private static final long SEED = 20_261_125;

    private final SplittableRandom random = new SplittableRandom(SEED);
    private final List<Part> parts = new ArrayList<>();
    private final List<Calibration> revisions = new ArrayList<>();

    @Test
    void theAuditIsWhatTheJournalFoldsTo() {
        Instant begin = Instant.now().minus(Duration.ofDays(20));
        List<Car> cars = new ArrayList<>();
        Part intake = shop().aPartFor("AIR_INTAKE");
        parts.addAll(List.of(intake, shop().aPartFor("AIR_INTAKE"), shop().aPartFor("DOWNPIPE")));
        Instant earlier = Instant.MAX;
        for (int i = 0; i < CARS; i++) {
            if (i == CARS * 3 / 4) {
                earlier = Instant.now().truncatedTo(ChronoUnit.MICROS);
            }
            boolean unknown = i % 6 == 5;
            Car car = shop().registers(unknown ? aCarOfUnknownHistory() : aCar());
            cars.add(car);
            live(car, unknown);
            if (i == CARS / 2) {
                shop().withdraws(revisions.get(0));
                shop().corrects(intake);
            }
        }
        shop().whilePolicySays(
                        "acknowledgementRequired",
                        false,
                        () -> cars.subList(0, 4).forEach(this::leave));

        Set<Finding> found = compare(cars, AuditQuestion.ALL, CARS / 2);
        assertThat(found).contains(Finding.EXCEPTION, Finding.LATE_RECORD, Finding.CHANGED_AFTER_HANDOFF);
        Set<Finding> before = compare(
                cars, new AuditQuestion(begin, null, Set.of(), null, null, null, null, null, earlier), CARS / 4);
        assertThat(before).contains(Finding.EXCEPTION);
    }

    private Set<Finding> compare(List<Car> cars, AuditQuestion question, int leastExceptions) {
        HandoffAudit audit = running().bean(HandoffAudit.class);
        HandoffAudit.Ready ready = audit.ready(question);
        List<AuditedHandoff> told = new ArrayList<>();
        audit.tell(ready, told::add);
        Set<Finding> found = EnumSet.noneOf(Finding.class);
        int exceptions = 0;
        for (Car car : cars) {
            UUID id = UUID.fromString(car.id());
            List<AuditedHandoff> rows =
                    told.stream().filter(row -> row.vehicle().id().equals(id)).toList();
            CarRecord record = running().bean(CarRecords.class).of(id);
            List<Judged> plain = PlainAudit.of(
                    record,
                    running().bean(Replays.class).replay(),
                    ready.search().knownAt());
            assertThat(rows).as("rows of %s", id).hasSameSizeAs(plain);
            for (int i = 0; i < rows.size(); i++) {
                same(rows.get(i), plain.get(i));
                found.addAll(rows.get(i).findings());
                exceptions += rows.get(i).failedThen().isEmpty() ? 0 : 1;
            }
        }
        assertThat(exceptions).isGreaterThan(leastExceptions);
        return found;
    }

    private static void same(AuditedHandoff row, Judged plain) {
        assertThat(row.handoffId()).isEqualTo(plain.handoff().stamp().id());
        assertThat(row.knownThen()).as("replayed: %s", row).isEqualTo(row.decidedThen());
        assertThat(row.failedKnownThen()).as("replayed: %s", row).isEqualTo(row.failedThen());
        assertThat(row.knownThen()).isEqualTo(plain.knownThen().verdict());
        assertThat(row.failedKnownThen()).isEqualTo(codes(plain.knownThen()));
        assertThat(row.knownNow()).as("%s", row).isEqualTo(plain.knownNow().verdict());
        assertThat(row.failedKnownNow()).as("%s", row).isEqualTo(codes(plain.knownNow()));
        assertThat(row.findings()).as("%s", row).containsExactlyInAnyOrderElementsOf(plain.findings());
        assertThat(row.voided()).isEqualTo(plain.voided());
        assertThat(row.returnedAt()).isEqualTo(plain.returnedAt());
        assertThat(row.unmatchedSince()).isEqualTo(plain.unmatchedSince());
        assertThat(row.matchedAgainAt()).isEqualTo(plain.matchedAgainAt());
        assertThat(row.stillUnmatchedSince()).isEqualTo(plain.stillSince());
        assertThat(row.daysUnmatched()).isEqualTo(AuditRun.days(plain.unmatchedFor()));
    }

    private static List<?> codes(Decision decision) {
        return decision.failed().stream().map(CheckResult::code).toList();
    }

    private void live(Car car, boolean unknown) {
        Calibration own = shop().issues(RevisionDraft.forThe(car).covers(parts.get(random.nextInt(parts.size()))));
        revisions.add(own);
        if (unknown && oneIn(2)) {
            car.isInspectedThroughout(parts.get(0));
        }
        List<Answer> records = new ArrayList<>();
        for (int i = 0; i < ACTS; i++) {
            act(car, own, records);
        }
        leave(car);
    }

    private void act(Car car, Calibration own, List<Answer> records) {
        Part part = parts.get(random.nextInt(parts.size()));
        switch (random.nextInt(11)) {
            case 0, 1 -> records.add(car.changes(sometime(fit(part))));
            case 2 ->
                records.add(car.changes(sometime(oneIn(2) ? fit(part) : refitFactory("DOWNPIPE"))
                        .reported()));
            case 3, 4 -> {
                Answer flashed = car.asksToFlash(sometime(flash(own)));
                if (flashed.status() == 201) {
                    records.add(flashed);
                }
            }
            case 5 -> records.add(car.readsBack(oneIn(4) ? Facts.aStrangeReading() : own.reading()));
            case 6 -> {
                if (car.findOpenItem().isPresent()) {
                    car.asksToClear(oneIn(3) ? "STILL_COVERED" : "FLASHED");
                }
            }
            case 7 -> car.acknowledges();
            case 8 -> {
                if (!records.isEmpty()) {
                    car.asksToStrikeOut(
                            records.get(random.nextInt(records.size())).id(), Facts.voiding());
                }
            }
            case 9 ->
                shop().as(Role.WRITER)
                        .post(car.path("arrivals"), sometime(Body.empty()))
                        .is(201);
            default -> {
                Answer left = leave(car);
                if (left.status() == 201 && oneIn(4)) {
                    records.add(left);
                }
            }
        }
    }

    /** CLEAR where the gate lets it; else, most often, by exception. */
    private Answer leave(Car car) {
        Body when = sometime(Body.empty());
        Answer asked = car.asksToLeave(when);
        return asked.status() == 201 || oneIn(4)
                ? asked
                : shop().as(Role.MANAGER)
                        .post(
                                car.path("handoffs"),
                                leavingWith(exception())
                                        .with(
                                                "effectiveAt",
                                                when.text("effectiveAt").isEmpty() ? null : when.text("effectiveAt")));
    }

    /** Now, or on a whole hour of the last days, so that times tie. */
    private Body sometime(Body fact) {
        return oneIn(2)
                ? fact
                : fact.at(Instant.now().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(random.nextInt(1, 48))));
    }

    private boolean oneIn(int chances) {
        return random.nextInt(chances) == 0;
    }
}
