package org.bayhold.buildsheet;

import static org.bayhold.buildsheet.BruteForceRecord.byThen;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.BruteForceRecord.Said;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;

/**
 * A second reading of docs/rules.md, to hold the fold against. It keeps no state of a car: every question is answered
 * by searching the whole record for what answers it ("the last that speaks of this place"), however slow that is. It
 * takes from the product the bare data and none of its reasoning, so that one mistake is not made twice.
 */
final class BruteForceCar {
    private final Registration registration;
    private final List<Revision> revisions;
    private final Instant effectiveAt;
    private final Instant knownAt;
    private final BruteForceRecord record;
    private final BruteForcePlaces places;

    BruteForceCar(
            Registration registration,
            List<Fact> facts,
            List<Revision> revisions,
            List<CategoryMove> moves,
            Instant effectiveAt,
            Instant knownAt) {
        this.registration = registration;
        this.revisions = revisions;
        this.effectiveAt = effectiveAt;
        this.knownAt = knownAt;
        this.record = new BruteForceRecord(facts, effectiveAt, knownAt);
        this.places = new BruteForcePlaces(record, registration.baseline(), moves, effectiveAt, knownAt);
    }

    Map<Place, BruteForcePlaces.Sheet> buildSheet() {
        return places.buildSheet();
    }

    /** Of each drive the last judgement; none of a drive whose first judgement does not count. */
    List<UUID> driveLogs() {
        List<UUID> logs = new ArrayList<>();
        for (Said said : record.said) {
            if (said.fact() instanceof DriveLogged first && first.again() == null) {
                UUID last = first.stamp().id();
                for (Said other : record.said.subList(said.at() + 1, record.said.size())) {
                    if (other.fact() instanceof DriveLogged judged
                            && first.stamp().id().equals(judged.again())) {
                        last = judged.stamp().id();
                    }
                }
                logs.add(last);
            }
        }
        return logs;
    }

    CarState.Stay stay() {
        return record.stay();
    }

    // which changes count (rules 1 and 10)

    List<CarState.Change> changes() {
        return record.said.stream().flatMap(said -> asChange(said).stream()).toList();
    }

    private Optional<CarState.Change> asChange(Said said) {
        Stamp stamp = said.fact().stamp();
        return Optional.ofNullable(said.place())
                .filter(place -> places.hasEffect(place.category()))
                .filter(place -> !said.isInspection() || places.contradicts(said, place))
                .filter(place -> place.category() != Category.FUEL || !isFuelOfTheCalibration(said, place))
                .map(place -> new CarState.Change(stamp.id(), place, stamp.effectiveAt(), stamp.recordedAt()));
    }

    private boolean isFuelOfTheCalibration(Said said, Place place) {
        Fitted fuel = places.sits(place, said.at() + 1);
        if (hasFactoryCalibration(said.at())) {
            return fuel.state() == Fitted.State.FACTORY;
        }
        InEcu in = neverFlashed(said.at()) ? foundIn(said.at()) : lastWritten(said.at());
        return (in instanceof InEcu.Flashed flashed && isCovered(flashed.revision(), place, fuel))
                || (in instanceof InEcu.Found found && isCovered(found.revision(), place, fuel));
    }

    // what is in the ECU (rules 10 and 12)

    InEcu inEcu() {
        int now = record.said.size();
        if (hasFactoryCalibration(now)) {
            return new InEcu.Factory(factoryReading());
        }
        return neverFlashed(now) ? foundIn(now) : lastWritten(now);
    }

    boolean neverFlashed() {
        return neverFlashed(record.said.size());
    }

    private boolean neverFlashed(int end) {
        return record.last(end, said -> said.fact() instanceof Fact.Flashed).isEmpty();
    }

    private boolean hasFactoryCalibration(int end) {
        return registration.baseline() == Baseline.FACTORY
                && neverFlashed(end)
                && record.last(end, this::isAnotherEcu)
                        .map(swap -> swap.is(Fact.Action.REFIT_FACTORY))
                        .orElse(true);
    }

    private boolean isAnotherEcu(Said said) {
        Place place = said.place();
        return place != null
                && place.category() == Category.ECU
                && said.found() != null
                && (!said.isInspection() || places.contradicts(said, place));
    }

    private InEcu lastWritten(int end) {
        Said last = record.last(end, said -> said.fact() instanceof Fact.Flashed || isAnotherEcu(said))
                .orElseThrow();
        if (!(last.fact() instanceof Fact.Flashed flash)) {
            return new InEcu.Unknown();
        }
        Stamp stamp = flash.stamp();
        Optional<Revision> file = revisions.stream()
                .filter(revision -> revision.id().equals(flash.calibrationId()))
                .findAny();
        if (flash.outcome() == Fact.Outcome.FAILED) {
            return new InEcu.Failed(file.orElse(null), stamp.effectiveAt(), stamp.id());
        }
        return file.isPresent()
                ? new InEcu.Flashed(file.get(), stamp.effectiveAt(), stamp.id(), stamp.by())
                : new InEcu.NotOurs(stamp.effectiveAt(), stamp.id());
    }

    /** The first revision that an ECU check showed since the ECU that is in the car was put in. */
    private InEcu foundIn(int end) {
        int from = record.last(end, this::isAnotherEcu).map(Said::at).orElse(-1);
        for (Said said : record.said.subList(from + 1, end)) {
            if (said.fact() instanceof Fact.ReadBack check && registration.baseline() == Baseline.UNKNOWN) {
                Optional<Revision> shown = shown(check, ecuHardware(said.at()));
                if (shown.isPresent()) {
                    return new InEcu.Found(
                            shown.get(), said.time(), check.stamp().id());
                }
            }
        }
        return new InEcu.Unknown();
    }

    /** Of several that look the same to the ECU, the one that was issued first. */
    private Optional<Revision> shown(Fact.ReadBack check, String hardware) {
        List<Revision> all = revisions.stream()
                .filter(revision -> byThen(revision.recordedAt(), check.stamp().recordedAt()))
                .filter(revision -> !withdrawnAt(revision, check.stamp().effectiveAt()))
                .filter(revision -> revision.ecuHardware().equals(hardware))
                .filter(revision -> isSame(revision.reading(), check.reading()))
                .toList();
        return all.stream()
                .filter(one -> all.stream().noneMatch(other -> wasIssuedBefore(other, one)))
                .findAny();
    }

    private static boolean wasIssuedBefore(Revision a, Revision b) {
        return a.recordedAt().equals(b.recordedAt())
                ? a.id().compareTo(b.id()) < 0
                : a.recordedAt().isBefore(b.recordedAt());
    }

    private boolean withdrawnAt(Revision revision, Instant time) {
        Instant end = revision.withdrawnAt();
        return end != null && byThen(end, knownAt) && byThen(end, time);
    }

    /** By CALID and CVN or by the hash of the file, and not contradicted by the other of the two. */
    private static boolean isSame(Reading a, Reading b) {
        boolean idsTold = a.calid() != null && a.cvn() != null && b.calid() != null && b.cvn() != null;
        boolean idsSame = Objects.equals(a.calid(), b.calid()) && Objects.equals(a.cvn(), b.cvn());
        boolean fileTold = a.fileSha256() != null && b.fileSha256() != null;
        boolean fileSame = Objects.equals(a.fileSha256(), b.fileSha256());
        return (idsTold || fileTold) && (idsSame || !idsTold) && (fileSame || !fileTold);
    }

    String ecuHardware() {
        return ecuHardware(record.said.size());
    }

    private String ecuHardware(int end) {
        return record.last(
                        end,
                        said -> isAnotherEcu(said)
                                && said.fact() instanceof Fact.PartChanged work
                                && (work.ecuHardware() != null || said.is(Fact.Action.REFIT_FACTORY)))
                .map(said -> ((Fact.PartChanged) said.fact()).ecuHardware())
                .orElse(registration.ecuHardware());
    }

    /** As registered, else what the first ECU check told, if it is strictly earlier than any change, flash or other ECU. */
    private Reading factoryReading() {
        Reading nothing = new Reading(null, null, null);
        if (!registration.factoryReading().equals(nothing)) {
            return registration.factoryReading();
        }
        return record.said.stream()
                .filter(said -> said.fact() instanceof Fact.ReadBack)
                .findFirst()
                .filter(check -> record.said.stream()
                        .filter(said -> byThen(said.time(), check.time()))
                        .noneMatch(said -> said.fact() instanceof Fact.Flashed
                                || isAnotherEcu(said)
                                || asChange(said).isPresent()))
                .map(check -> ((Fact.ReadBack) check.fact()).reading())
                .orElse(nothing);
    }

    // what is covered (rule 3)

    private static boolean isCovered(Revision revision, Place place, Fitted fitted) {
        List<CoverageLine> named = revision.coverage().stream()
                .filter(line -> line.place().equals(place))
                .toList();
        return switch (fitted.state()) {
            case UNKNOWN -> false;
            case PART -> named.stream().anyMatch(line -> line.partSpecIds().contains(fitted.partSpecId()));
            case NONE -> named.stream().anyMatch(CoverageLine::noneAllowed);
            case FACTORY -> named.isEmpty() || named.stream().anyMatch(CoverageLine::factoryAllowed);
        };
    }

    /** What sits at each place that {@code revision} does not cover. */
    Map<Place, Fitted> gaps(Revision revision) {
        Map<Place, Fitted> gaps = new LinkedHashMap<>();
        for (Place place : places.inOrder(revision.coverage())) {
            if (places.hasEffect(place.category()) && !isCovered(revision, place, places.sits(place))) {
                gaps.put(place, places.sits(place));
            }
        }
        return gaps;
    }

    // which retune item is open (rules 4 and 7)

    /** Where two were open at a past moment, the one that was opened last. */
    Optional<CarState.OpenItem> openItem() {
        return known(Fact.RetuneOpened.class).stream()
                .map(Fact.RetuneOpened::itemId)
                .filter(this::isOpen)
                .reduce((earlier, later) -> later)
                .map(item -> new CarState.OpenItem(item, causes(item)));
    }

    private boolean isOpen(UUID item) {
        boolean lapsed = known(Fact.RetuneLapsed.class).stream()
                .anyMatch(fact -> fact.itemId().equals(item));
        boolean signedOff = known(Fact.Cleared.class).stream()
                .anyMatch(fact ->
                        fact.itemId().equals(item) && byThen(fact.stamp().effectiveAt(), effectiveAt));
        boolean allStruckOut = causes(item).stream().allMatch(cause -> record.isStruckOut(cause.recordId()));
        return !lapsed
                && !signedOff
                && causes(item).stream()
                        .filter(cause -> allStruckOut || !record.isStruckOut(cause.recordId()))
                        .anyMatch(cause -> byThen(cause.effectiveAt(), effectiveAt));
    }

    private List<Cause> causes(UUID item) {
        List<Cause> causes = new ArrayList<>();
        for (Fact fact : known(Fact.class)) {
            if (fact instanceof Fact.RetuneOpened opened && opened.itemId().equals(item)) {
                causes.addAll(opened.causes());
            } else if (fact instanceof Fact.RetuneJoined joined
                    && joined.itemId().equals(item)) {
                causes.addAll(joined.causes());
            }
        }
        return causes;
    }

    private <T extends Fact> List<T> known(Class<T> kind) {
        return record.known.stream()
                .sorted((a, b) -> Long.compare(a.stamp().seq(), b.stamp().seq()))
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }
}
