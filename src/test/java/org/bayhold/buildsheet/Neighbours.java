package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;

/** Two facts that were recorded one right after the other. */
record Neighbours(Fact first, Fact second) {
    /**
     * Whether the record would say the same, had the two been recorded in the other order. They must both have happened
     * by the time of the earlier recording, and not meet in one of these ways: one strikes out the other; both are of
     * retune items; an ECU check is one of them and a revision was issued between the two recordings, which it could
     * show only in one order; or they happened at the same time (docs/rules.md, rule 9), unless both only speak of
     * places, of different ones, and not of fuel and ECU, of which one decides what the other means.
     */
    boolean areIndependent(List<Revision> revisions) {
        return !second.stamp().effectiveAt().isAfter(first.stamp().recordedAt())
                && !(strikes(first, second) || strikes(second, first))
                && !(isOfAnItem(first) && isOfAnItem(second))
                && !(first instanceof DriveLogged && second instanceof DriveLogged)
                && !((first instanceof Fact.ReadBack || second instanceof Fact.ReadBack)
                        && revisions.stream()
                                .anyMatch(revision -> isBetween(revision.recordedAt())
                                        || revision.recordedAt()
                                                .equals(second.stamp().recordedAt())))
                && (!first.stamp().effectiveAt().equals(second.stamp().effectiveAt()) || speakOfPlacesApart());
    }

    /** Known to the first recording and not yet to the second. */
    boolean isBetween(Instant knownAt) {
        return !knownAt.isBefore(first.stamp().recordedAt())
                && knownAt.isBefore(second.stamp().recordedAt());
    }

    private static boolean strikes(Fact fact, Fact target) {
        return fact instanceof Fact.Voided strike
                && strike.targetId().equals(target.stamp().id());
    }

    private static boolean isOfAnItem(Fact fact) {
        return fact instanceof Fact.RetuneOpened
                || fact instanceof Fact.RetuneJoined
                || fact instanceof Fact.RetuneLapsed
                || fact instanceof Fact.Cleared;
    }

    private boolean speakOfPlacesApart() {
        List<Place> of = places(first);
        List<Place> and = places(second);
        return !of.isEmpty()
                && !and.isEmpty()
                && of.stream().noneMatch(and::contains)
                && !(isOfFuelOrEcu(of) && isOfFuelOrEcu(and));
    }

    private static boolean isOfFuelOrEcu(List<Place> places) {
        return places.stream().map(Place::category).anyMatch(c -> c == Category.FUEL || c == Category.ECU);
    }

    private static List<Place> places(Fact fact) {
        if (fact instanceof Fact.PartChanged work) {
            return List.of(work.place());
        }
        return fact instanceof Fact.Inspected inspection
                ? inspection.lines().stream().map(Fact.Inspected.Line::place).toList()
                : List.of();
    }

    List<Fact> exchangedIn(List<Fact> facts) {
        List<Fact> other = new ArrayList<>(facts);
        int at = facts.indexOf(first);
        other.set(at, recorded(second, first.stamp()));
        other.set(at + 1, recorded(first, second.stamp()));
        return other;
    }

    private static Fact recorded(Fact fact, Stamp as) {
        Stamp was = fact.stamp();
        return Restamp.of(
                fact, new Stamp(was.id(), was.vehicleId(), as.seq(), was.effectiveAt(), as.recordedAt(), was.by()));
    }

    /** A state without the times of recording, and without the order of what happened at the same time. */
    record Unrecorded(
            List<BuildLine> lines,
            String ecuHardware,
            InEcu inEcu,
            boolean neverFlashed,
            Set<CarState.Change> changes,
            List<UUID> evidence,
            Optional<CarState.OpenItem> openItem,
            CarState.Stay stay) {}

    static Unrecorded withoutRecording(CarState car) {
        return new Unrecorded(
                car.lines().stream()
                        .map(line -> new BuildLine(
                                line.place(), line.group(), line.fitted(), line.since(), line.recordId(), null))
                        .toList(),
                car.ecuHardware(),
                car.inEcu(),
                car.neverFlashed(),
                new HashSet<>(car.changes().stream()
                        .map(c -> new CarState.Change(c.recordId(), c.place(), c.effectiveAt(), Instant.EPOCH))
                        .toList()),
                Stream.<List<? extends Fact>>of(
                                car.readBacks(),
                                car.driveLogs(),
                                car.acknowledgements(),
                                car.handoffs(),
                                car.clearances())
                        .flatMap(List::stream)
                        .map(fact -> fact.stamp().id())
                        .toList(),
                car.openItem(),
                car.stay());
    }
}
