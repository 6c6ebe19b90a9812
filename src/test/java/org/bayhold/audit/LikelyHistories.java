package org.bayhold.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fact.Source;
import org.bayhold.buildsheet.MadeLogs;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.Personal;
import org.bayhold.obd.Reading;
import org.bayhold.obd.TroubleCode;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/**
 * Histories from a seed of what a shop does most days: a part is fitted, the revision for it is flashed and read back,
 * the car leaves, and sometimes something of it goes wrong, is recorded late, or is struck out.
 */
final class LikelyHistories {
    static final Instant START = Instant.parse("2026-02-02T08:00:00Z");

    private static final Place INTAKE = Place.of(Category.AIR_INTAKE);
    private static final List<UUID> PARTS = List.of(new UUID(7, 1), new UUID(7, 2), new UUID(7, 3));
    private static final Personal NOTE = new Personal(new UUID(9, 9), "00");
    private static final String HARDWARE = "HW-1";

    private final SplittableRandom random;
    private final List<Revision> revisions = new ArrayList<>();
    private final List<Fact> facts = new ArrayList<>();
    private final UUID car;
    private Instant clock = START;

    private LikelyHistories(long seed) {
        this.random = new SplittableRandom(seed);
        this.car = id();
    }

    static CarRecord of(long seed) {
        return new LikelyHistories(seed).record();
    }

    private CarRecord record() {
        for (int i = 0; i < PARTS.size(); i++) {
            Instant withdrawn = oneIn(4) ? START.plus(Duration.ofMinutes(random.nextInt(3_000))) : null;
            revisions.add(new Revision(
                    id(),
                    "Street",
                    "r" + i,
                    HARDWARE,
                    new Reading("CAL-" + i, "0000000" + i, null),
                    Purpose.NORMAL,
                    List.of(new CoverageLine(INTAKE, List.of(PARTS.get(i)), false, false)),
                    List.of(),
                    false,
                    START,
                    withdrawn));
        }
        for (int visits = random.nextInt(1, 6); visits > 0; visits--) {
            visit(random.nextInt(PARTS.size()));
            while (oneIn(3)) {
                mishap();
            }
        }
        List<CategoryMove> moves = new ArrayList<>();
        if (oneIn(10)) {
            Instant at = START.plus(Duration.ofMinutes(random.nextInt(3_000)));
            moves.add(new CategoryMove(Category.AIR_INTAKE, true, at, at));
        }
        Registration registration = new Registration(car, Baseline.FACTORY, HARDWARE, Reading.NOTHING, START);
        return new CarRecord(registration, facts, revisions, new EffectGroups(moves), List.of());
    }

    private void visit(int part) {
        if (oneIn(2)) {
            facts.add(new Fact.Arrived(now(), null, null));
        }
        if (!oneIn(4)) {
            change(now(), part, Source.SHOP);
        }
        UUID item = id();
        facts.add(new Fact.RetuneOpened(now(), item, List.of(new Cause(Cause.Code.PART_CHANGED, lastId(), clock))));
        if (!oneIn(6)) {
            flash(now(), oneIn(8) ? random.nextInt(PARTS.size()) : part, Source.SHOP);
            readBack(now(), oneIn(10) ? random.nextInt(PARTS.size()) : part, Source.SHOP);
        }
        if (oneIn(2)) {
            facts.add(MadeLogs.log(
                    now(), null, revisions.get(part).id(), null, oneIn(4) ? Verdict.FAIL : Verdict.PASS, Source.SHOP));
        }
        if (oneIn(8)) {
            facts.add(new Fact.RetuneLapsed(now(), item));
        } else if (!oneIn(5)) {
            facts.add(new Fact.Cleared(
                    now(),
                    item,
                    oneIn(4) ? Fact.ClearanceBasis.STILL_COVERED : Fact.ClearanceBasis.FLASHED,
                    null,
                    List.of(),
                    null));
        }
        facts.add(new Fact.Acknowledged(now(), Fact.Usage.STREET, NOTE, null));
        boolean clear = !oneIn(4);
        facts.add(new Fact.HandedOver(
                oneIn(4) ? earlier() : now(),
                clear ? Fact.HandoffBasis.CLEAR : Fact.HandoffBasis.EXCEPTION,
                null,
                null,
                clear ? 0 : 1,
                "{}",
                oneIn(2) ? random.nextInt(2, 4) : null));
    }

    private void mishap() {
        int part = random.nextInt(PARTS.size());
        switch (random.nextInt(6)) {
            case 0 -> change(oneIn(2) ? earlier() : now(), part, Source.CUSTOMER_REPORTED);
            case 1 -> flash(oneIn(2) ? earlier() : now(), part, Source.CUSTOMER_REPORTED);
            case 2 -> readBack(oneIn(2) ? earlier() : now(), part, oneIn(2) ? Source.SHOP : Source.CUSTOMER_REPORTED);
            case 3 -> change(earlier(), part, Source.SHOP);
            default ->
                facts.add(new Fact.Voided(
                        now(), facts.get(random.nextInt(facts.size())).stamp().id(), NOTE, null));
        }
    }

    private void change(Stamp stamp, int part, Source source) {
        boolean factory = oneIn(8);
        facts.add(new Fact.PartChanged(
                stamp,
                INTAKE,
                factory ? Action.REFIT_FACTORY : Action.FIT,
                factory ? null : PARTS.get(part),
                null,
                null,
                source,
                null,
                null,
                null));
    }

    private void flash(Stamp stamp, int part, Source source) {
        UUID revision = oneIn(12) ? null : revisions.get(part).id();
        Fact.Outcome outcome = oneIn(12) ? Fact.Outcome.FAILED : Fact.Outcome.COMPLETED;
        facts.add(new Fact.Flashed(stamp, revision, outcome, source, null, null, null, null));
    }

    private void readBack(Stamp stamp, int part, Source source) {
        facts.add(new Fact.ReadBack(stamp, revisions.get(part).reading(), codes(), null, source, null, null));
    }

    /** Seldom any, and not always of the kind that holds a car. */
    private @Nullable List<TroubleCode> codes() {
        if (oneIn(2)) {
            return null;
        }
        return oneIn(3) ? List.of(TroubleCode.of(oneIn(3) ? "P0420" : "P0171", TroubleCode.Kind.PENDING)) : List.of();
    }

    private UUID lastId() {
        return facts.isEmpty() ? id() : facts.get(facts.size() - 1).stamp().id();
    }

    private Stamp now() {
        clock = clock.plus(Duration.ofMinutes(random.nextInt(1, 120)));
        return stamp(clock);
    }

    /** Recorded now, of any time before; often of the very time of another fact. */
    private Stamp earlier() {
        clock = clock.plus(Duration.ofMinutes(random.nextInt(1, 120)));
        if (oneIn(3) && !facts.isEmpty()) {
            return stamp(facts.get(random.nextInt(facts.size())).stamp().effectiveAt());
        }
        long since = Duration.between(START, clock).toMinutes();
        return stamp(START.plus(Duration.ofMinutes(random.nextLong(since + 1))));
    }

    private Stamp stamp(Instant effectiveAt) {
        return new Stamp(id(), car, facts.size() + 1, effectiveAt, clock, new UUID(8, random.nextInt(3)));
    }

    private UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }

    private boolean oneIn(int chances) {
        return random.nextInt(chances) == 0;
    }
}
