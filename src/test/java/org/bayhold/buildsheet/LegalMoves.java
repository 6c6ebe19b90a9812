package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.calibration.Revision;

/** What the shop refuses to record of a car (docs/rules.md, rules 2, 7, 8 and 12), so that no test starts from it. */
final class LegalMoves {
    private LegalMoves() {}

    static void check(Fact fact, MadeCar before) {
        Stamp stamp = fact.stamp();
        require(!stamp.effectiveAt().isAfter(stamp.recordedAt()), "it has not happened yet", fact);
        require(stamp.recordedAt().isAfter(before.lastRecordedAt()), "something was recorded after it", fact);
        Optional<UUID> open =
                before.stateAt(Instant.MAX, stamp.recordedAt()).openItem().map(CarState.OpenItem::id);
        if (fact instanceof Fact.Voided strike) {
            require(
                    before.facts().stream().anyMatch(f -> f.stamp().id().equals(strike.targetId())),
                    "there is no such record",
                    fact);
        } else if (fact instanceof Fact.Flashed flash) {
            checkFlash(flash, before);
        } else if (fact instanceof Fact.RetuneOpened) {
            require(open.isEmpty(), "at most one item is open for a car", fact);
        } else if (fact instanceof Fact.RetuneJoined joined) {
            require(open.equals(Optional.of(joined.itemId())), "this item is not open", fact);
        } else if (fact instanceof Fact.Cleared cleared) {
            require(open.equals(Optional.of(cleared.itemId())), "this item is not open", fact);
        } else if (fact instanceof Fact.RetuneLapsed lapsed) {
            require(open.equals(Optional.of(lapsed.itemId())), "this item is not open", fact);
        }
    }

    private static void checkFlash(Fact.Flashed flash, MadeCar before) {
        UUID id = flash.calibrationId();
        if (id == null || flash.source() != Fact.Source.SHOP) {
            return;
        }
        Stamp stamp = flash.stamp();
        Revision revision = before.revisions().stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow();
        CarState car = before.stateAt(stamp.effectiveAt(), stamp.recordedAt());
        require(revision.ecuHardware().equals(car.ecuHardware()), "the revision is for another ECU", flash);
        require(!revision.isWithdrawn(stamp.effectiveAt(), stamp.recordedAt()), "the revision was withdrawn", flash);
    }

    private static void require(boolean legal, String otherwise, Fact fact) {
        if (!legal) {
            throw new IllegalStateException(otherwise + ": " + fact);
        }
    }

    /** The same, done by somebody else and reported to the shop. */
    static Fact reported(Fact fact) {
        Fact.Source source = Fact.Source.CUSTOMER_REPORTED;
        if (fact instanceof Fact.PartChanged f) {
            return new Fact.PartChanged(
                    f.stamp(),
                    f.place(),
                    f.action(),
                    f.partSpecId(),
                    f.serial(),
                    f.ecuHardware(),
                    source,
                    f.odometerKm(),
                    f.performedBy(),
                    f.note());
        } else if (fact instanceof Fact.Flashed f) {
            return new Fact.Flashed(
                    f.stamp(),
                    f.calibrationId(),
                    f.outcome(),
                    source,
                    f.adaptationsReset(),
                    f.odometerKm(),
                    f.performedBy(),
                    f.note());
        } else if (fact instanceof Fact.ReadBack f) {
            return new Fact.ReadBack(
                    f.stamp(), f.reading(), f.troubleCodes(), f.readiness(), source, f.performedBy(), f.note());
        }
        if (fact instanceof DriveLogged f) {
            return MadeLogs.log(f.stamp(), f.again(), f.calibrationId(), f.map(), f.verdict(), source);
        }
        throw new IllegalStateException("nobody reports this: " + fact);
    }
}
