package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CarWrites;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Consequences;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fold;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.journal.Ids;
import org.bayhold.journal.OpenChain;
import org.bayhold.prediction.Risk;
import org.bayhold.vehicle.AfterRegistration;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;

/**
 * Opens a car's retune item, lets causes join it, and lets it lapse, in the same write as the fact that brings it about.
 */
@Component
class OpeningItems implements Consequences, AfterRegistration {
    /** An item with no cause left waits for these no longer: they say nothing of the car's calibration. */
    private static final Set<Check> OF_NO_CONCERN =
            Set.of(Check.RETUNE_CLEARED, Check.CUSTOMER_ACKNOWLEDGED, Check.NO_RELATED_TROUBLE_CODES);

    private final Decisions decisions;
    private final RetuneItemRows items;
    private final CauseRows causeRows;
    private final CarWrites writes;

    OpeningItems(Decisions decisions, RetuneItemRows items, CauseRows causeRows, @Lazy CarWrites writes) {
        this.decisions = decisions;
        this.items = items;
        this.causeRows = causeRows;
        this.writes = writes;
    }

    @Override
    public Effect of(OpenCar car, Fact fact) {
        Decision now = now(car);
        List<Cause> causes = Causes.of(fact, now, car.record().facts());
        if (!causes.isEmpty()) {
            return new Effect(openOrJoin(car, causes));
        }
        lapseIfCauseless(car, now);
        return new Effect(null);
    }

    /** A car of which nothing is known needs a retune from the first day. */
    @Override
    public void registered(OpenChain chain, Registration registration) {
        if (registration.baseline() == Baseline.UNKNOWN) {
            Cause cause = new Cause(Cause.Code.UNKNOWN_BASELINE, registration.vehicleId(), registration.recordedAt());
            UUID ignored = openOrJoin(writes.adopt(chain, registration), List.of(cause));
        }
    }

    /** Opens the car's item with these causes, or lets them join the open one; a cause joins once. */
    UUID openOrJoin(OpenCar car, List<Cause> causes) {
        UUID open = car.chain().openItemId();
        return open == null ? open(car, causes) : join(car, open, causes);
    }

    private UUID open(OpenCar car, List<Cause> causes) {
        UUID itemId = Ids.next();
        Instant at = car.chain().recordedAt();
        car.append(new Fact.RetuneOpened(car.stamp(earliest(causes, at)), itemId, causes));
        items.saveAndFlush(new RetuneItemRow(itemId, car.vehicleId(), at, risk(car)));
        causes.forEach(cause -> causeRows.save(new CauseRow(itemId, cause, at)));
        car.chain().openItemId(itemId);
        return itemId;
    }

    private UUID join(OpenCar car, UUID itemId, List<Cause> causes) {
        Set<Cause> known =
                Set.copyOf(openItem(car, itemId).map(CarState.OpenItem::causes).orElse(List.of()));
        List<Cause> further =
                causes.stream().filter(cause -> !known.contains(cause)).toList();
        if (!further.isEmpty()) {
            Instant at = car.chain().recordedAt();
            car.append(new Fact.RetuneJoined(car.stamp(earliest(further, at)), itemId, further));
            further.forEach(cause -> causeRows.save(new CauseRow(itemId, cause, at)));
            row(itemId).joined(risk(car));
        }
        return itemId;
    }

    /** Rule 7: an item whose causes are all struck out closes when no other check fails. */
    private void lapseIfCauseless(OpenCar car, Decision now) {
        UUID itemId = car.chain().openItemId();
        if (itemId == null) {
            return;
        }
        Set<UUID> voided = Fold.voided(car.record().facts(), car.chain().recordedAt());
        boolean causeless = openItem(car, itemId)
                .filter(item -> item.causes().stream().allMatch(cause -> voided.contains(cause.recordId())))
                .isPresent();
        boolean othersPass = now.failed().stream().allMatch(check -> OF_NO_CONCERN.contains(check.code()));
        if (causeless && othersPass) {
            Instant at = car.chain().recordedAt();
            car.append(new Fact.RetuneLapsed(car.stamp(at), itemId));
            row(itemId).closed(at, RetuneItemRow.CAUSES_VOIDED);
            items.flush();
            car.chain().openItemId(null);
        }
    }

    private Optional<CarState.OpenItem> openItem(OpenCar car, UUID itemId) {
        return car.now().openItem().filter(item -> item.id().equals(itemId));
    }

    private RetuneItemRow row(UUID itemId) {
        return items.findById(itemId).orElseThrow();
    }

    private Risk risk(OpenCar car) {
        return Objects.requireNonNullElse(now(car).risk(), Risk.LOW);
    }

    private Decision now(OpenCar car) {
        Instant at = car.chain().recordedAt();
        return decisions.of(car.record(), at, at);
    }

    private static Instant earliest(List<Cause> causes, @Nullable Instant none) {
        return causes.stream().map(Cause::effectiveAt).min(Instant::compareTo).orElse(Objects.requireNonNull(none));
    }
}
