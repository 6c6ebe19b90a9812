package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/** A car while its facts are applied in order. */
final class FoldingCar implements Fact.Listener {
    private final Registration registration;
    private final List<Revision> revisions;
    private final Instant knownAt;

    private final BuildSheet sheet;
    private final List<CarState.Change> changes = new ArrayList<>();
    private final List<Fact.ReadBack> readBacks = new ArrayList<>();
    private final Map<UUID, DriveLogged> driveLogs = new LinkedHashMap<>();
    private final List<Fact.Acknowledged> acknowledgements = new ArrayList<>();
    private final List<Fact.HandedOver> handoffs = new ArrayList<>();
    private final List<Fact.Cleared> clearances = new ArrayList<>();
    private String ecuHardware;
    private InEcu inEcu;
    private boolean neverFlashed = true;
    private @Nullable Instant firstTouchedAt;
    private CarState.Stay stay = new CarState.Stay(true, null, false);

    FoldingCar(
            Registration registration,
            List<Revision> revisions,
            EffectGroups groups,
            Instant effectiveAt,
            Instant knownAt) {
        this.registration = registration;
        this.revisions = revisions;
        this.knownAt = knownAt;
        this.ecuHardware = registration.ecuHardware();
        this.inEcu = asRegistered();
        this.sheet = new BuildSheet(registration.baseline(), groups, effectiveAt, knownAt);
    }

    @Override
    public void arrived(Fact.Arrived fact) {
        stay = new CarState.Stay(true, fact.stamp().effectiveAt(), false);
    }

    @Override
    public void partChanged(Fact.PartChanged fact) {
        arriveIfShopWork(fact.stamp(), fact.source());
        Fitted before = sheet.fittedAt(fact.place());
        Fitted after = after(fact, before);
        if (!isFuelOfTheCalibration(fact.place(), after)) {
            change(fact.stamp(), fact.place());
        }
        if (fact.action() != Fact.Action.ADJUST) { // which is a change, but not what put the part there
            sheet.put(fact.stamp(), fact.place(), after);
            if (fact.place().category() == Category.ECU) {
                anotherEcu(fact);
            }
        }
    }

    private static Fitted after(Fact.PartChanged fact, Fitted before) {
        return switch (fact.action()) {
            case FIT -> fact.partSpecId() == null ? Fitted.UNKNOWN : Fitted.part(fact.partSpecId());
            case REMOVE -> Fitted.NONE;
            case REFIT_FACTORY -> Fitted.FACTORY;
            case ADJUST -> before;
        };
    }

    /** What was flashed into the ECU that was taken out counts no more (rule 12). */
    private void anotherEcu(Fact.PartChanged fact) {
        touched(fact.stamp());
        boolean factoryEcu = fact.action() == Fact.Action.REFIT_FACTORY;
        if (fact.ecuHardware() != null) {
            ecuHardware = fact.ecuHardware();
        } else if (factoryEcu) {
            ecuHardware = registration.ecuHardware();
        }
        inEcu = factoryEcu && neverFlashed ? asRegistered() : new InEcu.Unknown();
    }

    @Override
    public void inspected(Fact.Inspected fact) {
        arriveIfShopWork(fact.stamp(), fact.source());
        for (Fact.Inspected.Line line : fact.lines()) {
            Fitted before = sheet.fittedAt(line.place());
            Fitted found = new Fitted(line.state(), line.partSpecId());
            // unknown becoming known is not a change (rule 10)
            boolean contradicts = !before.equals(found) && before.state() != Fitted.State.UNKNOWN;
            if (contradicts && !isFuelOfTheCalibration(line.place(), found)) {
                change(fact.stamp(), line.place());
            }
            if (!before.equals(found)) {
                sheet.put(fact.stamp(), line.place(), found);
            }
            if (contradicts && line.place().category() == Category.ECU) {
                touched(fact.stamp());
                inEcu = new InEcu.Unknown();
            }
        }
    }

    @Override
    public void flashed(Fact.Flashed fact) {
        arriveIfShopWork(fact.stamp(), fact.source());
        neverFlashed = false;
        Stamp stamp = fact.stamp();
        Optional<Revision> revision = Optional.ofNullable(fact.calibrationId()).map(this::revision);
        inEcu = switch (fact.outcome()) {
            case COMPLETED ->
                revision.<InEcu>map(r -> new InEcu.Flashed(r, stamp.effectiveAt(), stamp.id(), stamp.by()))
                        .orElseGet(() -> new InEcu.NotOurs(stamp.effectiveAt(), stamp.id()));
            case FAILED -> new InEcu.Failed(revision.orElse(null), stamp.effectiveAt(), stamp.id());
        };
    }

    @Override
    public void readBack(Fact.ReadBack fact) {
        arriveIfShopWork(fact.stamp(), fact.source());
        readBacks.add(fact);
        if (inEcu instanceof InEcu.Unknown && neverFlashed && registration.baseline() == Baseline.UNKNOWN) {
            found(fact)
                    .ifPresent(revision -> inEcu = new InEcu.Found(
                            revision, fact.stamp().effectiveAt(), fact.stamp().id()));
        }
    }

    /** The revision in force, issued before the check was recorded, that the ECU shows itself to run (rule 10). */
    private Optional<Revision> found(Fact.ReadBack fact) {
        return revisions.stream()
                .filter(revision -> !revision.recordedAt().isAfter(fact.stamp().recordedAt()))
                .filter(revision -> !revision.isWithdrawn(fact.stamp().effectiveAt(), knownAt))
                .filter(revision -> revision.ecuHardware().equals(ecuHardware))
                .filter(revision -> revision.reading().shows(fact.reading()))
                .min(Comparator.comparing(Revision::recordedAt).thenComparing(Revision::id));
    }

    /** Of one drive the last judgement counts; where the first is struck out, the drive is. */
    @Override
    public void driveLogged(DriveLogged fact) {
        arriveIfShopWork(fact.stamp(), fact.source());
        boolean isFirst = fact.again() == null;
        if (isFirst || driveLogs.containsKey(fact.drive())) {
            driveLogs.put(fact.drive(), fact);
        }
    }

    @Override
    public void acknowledged(Fact.Acknowledged fact) {
        acknowledgements.add(fact);
    }

    @Override
    public void cleared(Fact.Cleared fact) {
        clearances.add(fact);
    }

    @Override
    public void handedOver(Fact.HandedOver fact) {
        handoffs.add(fact);
        stay = new CarState.Stay(false, fact.stamp().effectiveAt(), false);
    }

    // what follows says nothing about the car itself: voids and items are read before the fold, refusals change nothing

    @Override
    public void voided(Fact.Voided fact) {}

    @Override
    public void retuneOpened(Fact.RetuneOpened fact) {}

    @Override
    public void retuneJoined(Fact.RetuneJoined fact) {}

    @Override
    public void retunePlanned(Fact.RetunePlanned fact) {}

    @Override
    public void retuneLapsed(Fact.RetuneLapsed fact) {}

    @Override
    public void handoffRefused(Fact.HandoffRefused fact) {}

    /** @param moment not before the last fact, and with no move of a category since the time it was made for */
    CarState state(Instant moment, Optional<CarState.OpenItem> openItem) {
        return new CarState(
                moment,
                knownAt,
                registration,
                sheet.lines(),
                ecuHardware,
                inEcu instanceof InEcu.Factory ? new InEcu.Factory(factoryReading()) : inEcu,
                neverFlashed,
                List.copyOf(changes),
                List.copyOf(readBacks),
                List.copyOf(driveLogs.values()),
                List.copyOf(acknowledgements),
                List.copyOf(handoffs),
                List.copyOf(clearances),
                openItem,
                stay);
    }

    private InEcu asRegistered() {
        return switch (registration.baseline()) {
            case FACTORY -> new InEcu.Factory(registration.factoryReading());
            case UNKNOWN -> new InEcu.Unknown();
        };
    }

    private void touched(Stamp stamp) {
        firstTouchedAt = firstTouchedAt == null ? stamp.effectiveAt() : firstTouchedAt;
    }

    /** From registration, or from a first ECU check earlier than the first change; a tie proves nothing (rules 9 and 10). */
    private Reading factoryReading() {
        if (!registration.factoryReading().equals(Reading.NOTHING)) {
            return registration.factoryReading();
        }
        return readBacks.stream()
                .findFirst()
                .filter(check ->
                        firstTouchedAt == null || check.stamp().effectiveAt().isBefore(firstTouchedAt))
                .map(Fact.ReadBack::reading)
                .orElse(Reading.NOTHING);
    }

    /** The shop cannot work on a car that is out: its work implies that the car came in. */
    private void arriveIfShopWork(Stamp stamp, Fact.Source source) {
        if (source == Fact.Source.SHOP && !stay.inShop()) {
            stay = new CarState.Stay(true, stamp.effectiveAt(), true);
        }
    }

    private void change(Stamp stamp, Place place) {
        if (sheet.groupOf(place.category()) != EffectGroup.NO_EFFECT) {
            touched(stamp);
            changes.add(new CarState.Change(stamp.id(), place, stamp.effectiveAt(), stamp.recordedAt()));
        }
    }

    /** A fuel that the flashed revision names, or the factory fuel where it names none, opens nothing (rule 1). */
    private boolean isFuelOfTheCalibration(Place place, Fitted fuel) {
        if (place.category() != Category.FUEL) {
            return false;
        }
        if (inEcu instanceof InEcu.Factory) {
            return fuel.state() == Fitted.State.FACTORY;
        }
        if (inEcu instanceof InEcu.Flashed flashed) {
            return Coverage.covers(flashed.revision().coverageAt(place), fuel);
        }
        return inEcu instanceof InEcu.Found found
                && Coverage.covers(found.revision().coverageAt(place), fuel);
    }

    private Revision revision(UUID id) {
        return revisions.stream()
                .filter(revision -> revision.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a fact cites a revision that was not given: " + id));
    }
}
