package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/**
 * One car as it stood at {@code effectiveAt} according to what was recorded by {@code knownAt}.
 *
 * @param lines the build sheet: every category with an effect, and every other place that the record names, in order
 * @param changes every change at a place with an effect, in order; unknown becoming known is not one
 * @param neverFlashed no flash, completed or failed, is on record
 * @param readBacks ECU checks in order
 * @param driveLogs recorded drives in order, each as it was judged last
 * @param acknowledgements in order
 * @param handoffs in order
 * @param clearances sign-offs in order, those struck out left away
 * @param openItem the retune item that is open
 * @param stay whether the car is in the shop, and since when
 */
public record CarState(
        Instant effectiveAt,
        Instant knownAt,
        Registration registration,
        List<BuildLine> lines,
        String ecuHardware,
        InEcu inEcu,
        boolean neverFlashed,
        List<Change> changes,
        List<Fact.ReadBack> readBacks,
        List<DriveLogged> driveLogs,
        List<Fact.Acknowledged> acknowledgements,
        List<Fact.HandedOver> handoffs,
        List<Fact.Cleared> clearances,
        Optional<OpenItem> openItem,
        Stay stay) {

    /**
     * A change at a place with an effect.
     *
     * @param recordId the part change, or the inspection that contradicted the record
     */
    public record Change(UUID recordId, Place place, Instant effectiveAt, Instant recordedAt) {}

    /** @param causes every cause of the item known so far, the struck-out ones too */
    public record OpenItem(UUID id, List<Cause> causes) {}

    /**
     * @param since null where no arrival and no handover is on record: the car was registered at the counter
     * @param implied the arrival was not recorded, but follows from the shop's work on the car
     */
    public record Stay(boolean inShop, @Nullable Instant since, boolean implied) {}

    /** What sits at a place; a place that the record never named is as the baseline says. */
    public Fitted fittedAt(Place place) {
        return lines.stream()
                .filter(line -> line.place().equals(place))
                .findFirst()
                .map(BuildLine::fitted)
                .orElseGet(this::baselineFitted);
    }

    /** What the baseline says of every place. */
    public Fitted baselineFitted() {
        return switch (registration.baseline()) {
            case FACTORY -> Fitted.FACTORY;
            case UNKNOWN -> Fitted.UNKNOWN;
        };
    }

    /** Factory parts at every place with an effect, and nothing but the factory calibration in the ECU. */
    public boolean isFactoryThroughout() {
        return inEcu instanceof InEcu.Factory
                && lines.stream()
                        .filter(BuildLine::hasEffect)
                        .allMatch(line -> line.fitted().state() == Fitted.State.FACTORY);
    }

    /** When the software that is in the ECU came into it (for a found revision: when it was found); empty where unknown. */
    public Optional<Instant> flashedAt() {
        return inEcu.match(new InEcu.Cases<>() {
            @Override
            public Optional<Instant> factory(InEcu.Factory in) {
                return Optional.empty();
            }

            @Override
            public Optional<Instant> unknown(InEcu.Unknown in) {
                return Optional.empty();
            }

            @Override
            public Optional<Instant> flashed(InEcu.Flashed in) {
                return Optional.of(in.at());
            }

            @Override
            public Optional<Instant> found(InEcu.Found in) {
                return Optional.of(in.at());
            }

            @Override
            public Optional<Instant> notOurs(InEcu.NotOurs in) {
                return Optional.of(in.at());
            }

            @Override
            public Optional<Instant> failed(InEcu.Failed in) {
                return Optional.of(in.at());
            }
        });
    }

    /** The revision that runs in the ECU: flashed, or found by an ECU check. */
    public Optional<Revision> revision() {
        if (inEcu instanceof InEcu.Flashed flashed) {
            return Optional.of(flashed.revision());
        }
        return inEcu instanceof InEcu.Found found ? Optional.of(found.revision()) : Optional.empty();
    }

    /** What the ECU is expected to report; empty where nobody knows. */
    public Optional<Reading> expectedReading() {
        if (inEcu instanceof InEcu.Factory factory) {
            return Optional.of(factory.reading()).filter(reading -> !reading.equals(Reading.NOTHING));
        }
        return revision().map(Revision::reading);
    }
}
