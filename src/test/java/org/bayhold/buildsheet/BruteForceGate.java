package org.bayhold.buildsheet;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.obd.TroubleCode;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/**
 * A second reading of the gate (docs/rules.md, "Gate checks"), under the policy that a new shop has and without
 * corrections of parts, over the second reading of the car. It takes nothing from the product's gate.
 */
public final class BruteForceGate {
    private static final Duration EVIDENCE_KEEPS = Duration.ofHours(24);

    private final BruteForceCar car;
    private final BruteForceRecord record;
    private final Instant effectiveAt;
    private final Instant knownAt;

    public BruteForceGate(
            Registration registration,
            List<Fact> facts,
            List<Revision> revisions,
            Instant effectiveAt,
            Instant knownAt) {
        this.car = new BruteForceCar(registration, facts, revisions, List.of(), effectiveAt, knownAt);
        this.record = new BruteForceRecord(facts, effectiveAt, knownAt);
        this.effectiveAt = effectiveAt;
        this.knownAt = knownAt;
    }

    /** What holds the car; nothing at all where it is CLEAR. */
    public List<String> whatHolds() {
        List<String> holds = new ArrayList<>();
        boolean partsKnown = car.buildSheet().values().stream()
                .filter(line -> line.group() != EffectGroup.NO_EFFECT)
                .noneMatch(line -> line.fitted().state() == Fitted.State.UNKNOWN);
        if (!partsKnown) {
            holds.add("a part is unknown");
        }
        if (openItem().isPresent()) {
            holds.add("a retune item is open");
        }
        if (isToldOfAFault()) {
            holds.add("a trouble code of the mixture");
        }
        if (!isFactory() && hasFailedADrive()) {
            holds.add("a drive that failed");
        }
        if (!isFactory()) {
            holds.addAll(whatHoldsAFlashedCar());
        }
        return holds;
    }

    /** The revision that the car runs, in force or not. */
    public Optional<Revision> runs() {
        return flash().map(InEcu.Flashed::revision);
    }

    public Optional<UUID> openItem() {
        return car.openItem().map(CarState.OpenItem::id);
    }

    private boolean isFactory() {
        return car.neverFlashed()
                && car.inEcu() instanceof InEcu.Factory
                && car.buildSheet().values().stream()
                        .filter(line -> line.group() != EffectGroup.NO_EFFECT)
                        .allMatch(line -> line.fitted().state() == Fitted.State.FACTORY);
    }

    private Optional<InEcu.Flashed> flash() {
        return car.inEcu() instanceof InEcu.Flashed flashed ? Optional.of(flashed) : Optional.empty();
    }

    private List<String> whatHoldsAFlashedCar() {
        if (flash().isEmpty()) {
            return List.of("no revision of the shop is in the ECU: " + car.inEcu());
        }
        InEcu.Flashed flash = flash().get();
        Revision revision = flash.revision();
        List<String> holds = new ArrayList<>();
        if (car.changes().stream()
                .anyMatch(change -> !change.effectiveAt().isBefore(flash.at()) && !isSignedOffAsCovered(change))) {
            holds.add("changed after the flash");
        }
        if (isWithdrawn(revision) || revision.purpose() == Purpose.TRANSFER) {
            holds.add("the revision is not in force");
        }
        if (!car.gaps(revision).isEmpty() || !revision.ecuHardware().equals(car.ecuHardware())) {
            holds.add("the revision does not cover the car");
        }
        if (!isReadBack(flash)) {
            holds.add("no matching read-back");
        }
        if (!isAcknowledged()) {
            holds.add("not acknowledged");
        }
        return holds;
    }

    private boolean isWithdrawn(Revision revision) {
        Instant at = revision.withdrawnAt();
        return at != null && at.compareTo(effectiveAt) <= 0 && at.compareTo(knownAt) <= 0;
    }

    private boolean isSignedOffAsCovered(CarState.Change change) {
        return heard(Fact.Cleared.class).stream()
                .filter(signed -> signed.basis() == Fact.ClearanceBasis.STILL_COVERED)
                .anyMatch(signed -> change.recordedAt().isBefore(signed.stamp().recordedAt())
                        && change.effectiveAt().isBefore(signed.stamp().effectiveAt()));
    }

    private boolean isReadBack(InEcu.Flashed flash) {
        List<Fact.ReadBack> since = heard(Fact.ReadBack.class).stream()
                .filter(check -> !check.stamp().effectiveAt().isBefore(flash.at()))
                .toList();
        if (since.isEmpty()) {
            return false;
        }
        Fact.ReadBack newest = since.get(since.size() - 1);
        Instant at = newest.stamp().effectiveAt();
        return at.isAfter(flash.at())
                && newest.reading().shows(flash.revision().reading())
                && Duration.between(at, effectiveAt).compareTo(EVIDENCE_KEEPS) <= 0;
    }

    /** By the last check after the flash that brought codes; by one at the very time of the flash only if it has a fault. */
    private boolean isToldOfAFault() {
        Instant flashed = since();
        boolean fault = false;
        boolean proven = false;
        for (Fact.ReadBack check : heard(Fact.ReadBack.class)) {
            Instant at = check.stamp().effectiveAt();
            List<TroubleCode> codes = check.troubleCodes();
            if (codes == null || at.isBefore(flashed)) {
                continue;
            }
            boolean related = codes.stream().anyMatch(TroubleCode::related);
            boolean proves = at.isAfter(flashed) || car.inEcu() instanceof InEcu.Found;
            fault = proves ? related : fault || (related && !proven);
            proven = proven || proves;
        }
        return fault;
    }

    /** By the last drive with what is in the ECU that came to a verdict; at the very time of the flash only a failed one. */
    private boolean hasFailedADrive() {
        UUID runs = runs().map(Revision::id).orElse(found());
        boolean failed = false;
        for (UUID id : car.driveLogs()) {
            DriveLogged log = heard(DriveLogged.class).stream()
                    .filter(judged -> judged.stamp().id().equals(id))
                    .findFirst()
                    .orElseThrow();
            Instant at = log.stamp().effectiveAt();
            if (!Objects.equals(log.calibrationId(), runs) || at.isBefore(since())) {
                continue;
            }
            switch (log.verdict()) {
                case FAIL -> failed = true;
                case PASS -> failed = failed && !at.isAfter(since());
                case INSUFFICIENT -> {}
            }
        }
        return failed;
    }

    private @Nullable UUID found() {
        return car.inEcu() instanceof InEcu.Found in ? in.revision().id() : null;
    }

    /** When what is in the ECU came into it, where anybody knows. */
    private Instant since() {
        if (car.inEcu() instanceof InEcu.Flashed in) {
            return in.at();
        } else if (car.inEcu() instanceof InEcu.NotOurs in) {
            return in.at();
        } else if (car.inEcu() instanceof InEcu.Failed in) {
            return in.at();
        }
        return car.inEcu() instanceof InEcu.Found in ? in.at() : Instant.MIN;
    }

    private boolean isAcknowledged() {
        Instant since = heard(Fact.HandedOver.class).stream()
                .map(handover -> handover.stamp().effectiveAt())
                .filter(at -> at.isBefore(effectiveAt))
                .max(Instant::compareTo)
                .orElse(Instant.MIN);
        return heard(Fact.Acknowledged.class).stream()
                .anyMatch(signed -> signed.stamp().effectiveAt().isAfter(since));
    }

    private <T extends Fact> List<T> heard(Class<T> kind) {
        return record.said.stream()
                .map(BruteForceRecord.Said::fact)
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }
}
