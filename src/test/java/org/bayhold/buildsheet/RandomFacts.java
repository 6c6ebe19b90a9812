package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fact.Outcome;
import org.bayhold.buildsheet.Fact.Source;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;

/** The facts of one random history, recorded one after another. */
final class RandomFacts {
    private static final Personal NOTE = new Personal(new UUID(9, 9), "00");

    private final RandomHistories random;
    private final UUID vehicleId;
    private final List<Revision> revisions;
    private final boolean flashes;
    private final List<Fact> facts = new ArrayList<>();
    private Instant clock = RandomHistories.START;
    private @Nullable UUID openItem;

    RandomFacts(RandomHistories random, UUID vehicleId, List<Revision> revisions) {
        this.random = random;
        this.vehicleId = vehicleId;
        this.revisions = revisions;
        this.flashes = !random.oneIn(3);
    }

    List<Fact> upTo(int count) {
        while (facts.size() < count) {
            facts.add(next(stamp()));
        }
        return List.copyOf(facts);
    }

    private Stamp stamp() {
        clock = clock.plus(random.minutes(15));
        Instant effectiveAt = !facts.isEmpty() && random.oneIn(4)
                ? random.oneOf(facts).stamp().effectiveAt()
                : random.before(clock);
        return new Stamp(random.id(), vehicleId, facts.size() + 1, effectiveAt, clock, new UUID(8, random.below(3)));
    }

    private Fact next(Stamp stamp) {
        int kind = random.below(27);
        if (kind < 7) {
            return partChanged(stamp);
        } else if (kind < 11) {
            return inspected(stamp);
        } else if (kind < 14) {
            return flashes ? flashed(stamp) : partChanged(stamp);
        } else if (kind < 16) {
            return new Fact.ReadBack(stamp, random.reading(), random.codes(), null, source(), null, null);
        } else if (kind < 19) {
            return strike(stamp).orElseGet(() -> inspected(stamp));
        } else if (kind < 22) {
            return aboutTheItem(stamp);
        } else if (kind < 25) {
            return drove(stamp);
        }
        return atTheCounter(stamp);
    }

    private Fact partChanged(Stamp stamp) {
        Place place = random.place();
        Action action = random.oneOf(List.of(Action.values()));
        UUID part = action == Action.FIT && !random.oneIn(5) ? random.oneOf(RandomHistories.PARTS) : null;
        String hardware = place.category() == Category.ECU ? random.hardware() : null;
        return new Fact.PartChanged(stamp, place, action, part, null, hardware, source(), null, null, null);
    }

    private Fact inspected(Stamp stamp) {
        List<Fact.Inspected.Line> lines = IntStream.rangeClosed(0, random.below(4))
                .mapToObj(i -> line(random.place()))
                .toList();
        return new Fact.Inspected(stamp, lines, source(), null, null);
    }

    private Fact.Inspected.Line line(Place place) {
        Fitted.State state = random.oneOf(List.of(Fitted.State.values()));
        UUID part = state == Fitted.State.PART ? random.oneOf(RandomHistories.PARTS) : null;
        return new Fact.Inspected.Line(place, state, part);
    }

    private Fact flashed(Stamp stamp) {
        List<Revision> issued = revisions.stream()
                .filter(revision -> !revision.recordedAt().isAfter(stamp.recordedAt()))
                .toList();
        UUID file = issued.isEmpty() || random.oneIn(6)
                ? null
                : random.oneOf(issued).id();
        Outcome outcome = random.oneIn(5) ? Outcome.FAILED : Outcome.COMPLETED;
        return new Fact.Flashed(stamp, file, outcome, source(), null, null, null, null);
    }

    /** With any revision or none; every third one is an earlier one again, told at the time of that. */
    private Fact drove(Stamp stamp) {
        List<DriveLogged> earlier = facts.stream()
                .filter(DriveLogged.class::isInstance)
                .map(DriveLogged.class::cast)
                .toList();
        UUID file = random.oneIn(4) ? null : random.oneOf(revisions).id();
        Verdict verdict = random.oneOf(List.of(Verdict.values()));
        if (earlier.isEmpty() || !random.oneIn(3)) {
            return MadeLogs.log(stamp, null, file, null, verdict, source());
        }
        DriveLogged last = random.oneOf(earlier);
        Stamp then = new Stamp(
                stamp.id(), stamp.vehicleId(), stamp.seq(), last.stamp().effectiveAt(), stamp.recordedAt(), stamp.by());
        return MadeLogs.log(then, last.drive(), last.calibrationId(), null, verdict, source());
    }

    /** Any fact may have been wrong, one more often that is itself a striking-out; items are closed, not struck out. */
    private Optional<Fact> strike(Stamp stamp) {
        List<Fact> targets = facts.stream()
                .filter(fact -> !(fact instanceof Fact.RetuneOpened
                        || fact instanceof Fact.RetuneJoined
                        || fact instanceof Fact.RetuneLapsed))
                .toList();
        List<Fact> strikes =
                facts.stream().filter(Fact.Voided.class::isInstance).toList();
        List<Fact> from = !strikes.isEmpty() && random.oneIn(2) ? strikes : targets;
        return from.isEmpty()
                ? Optional.empty()
                : Optional.of(new Fact.Voided(stamp, random.oneOf(from).stamp().id(), NOTE, null));
    }

    private Fact aboutTheItem(Stamp stamp) {
        UUID item = openItem;
        if (item == null) {
            openItem = random.id();
            return new Fact.RetuneOpened(stamp, openItem, causes());
        }
        switch (random.below(5)) {
            case 0:
                openItem = null;
                return new Fact.RetuneLapsed(stamp, item);
            case 1, 2:
                openItem = null;
                return new Fact.Cleared(stamp, item, Fact.ClearanceBasis.FLASHED, null, List.of(), null);
            case 3:
                return new Fact.RetunePlanned(stamp, item, null, null, null);
            default:
                return new Fact.RetuneJoined(stamp, item, causes());
        }
    }

    private List<Cause> causes() {
        return IntStream.rangeClosed(0, random.below(2))
                .mapToObj(i -> new Cause(
                        random.oneOf(List.of(Cause.Code.values())),
                        facts.isEmpty() || random.oneIn(4)
                                ? random.id()
                                : random.oneOf(facts).stamp().id(),
                        random.before(clock)))
                .toList();
    }

    private Fact atTheCounter(Stamp stamp) {
        return switch (random.below(4)) {
            case 0 -> new Fact.Arrived(stamp, null, null);
            case 1 ->
                new Fact.HandedOver(stamp, Fact.HandoffBasis.CLEAR, null, null, 0, "{}", random.oneIn(2) ? 2 : null);
            case 2 -> new Fact.Acknowledged(stamp, Fact.Usage.STREET, NOTE, null);
            default -> new Fact.HandoffRefused(stamp, 1, "{}");
        };
    }

    private Source source() {
        return random.oneIn(4) ? Source.CUSTOMER_REPORTED : Source.SHOP;
    }
}
