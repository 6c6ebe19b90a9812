package org.bayhold.advice;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.advice.AdviceRequest.FittedPart;
import org.bayhold.advice.AdviceRequest.Proposed;
import org.bayhold.advice.Hypothesis.Proposal;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Text;
import org.bayhold.obd.Reading;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Makes of a question the car as it is and as it might be: the same fold as of a real car, with facts that nobody records. */
@Component
class WhatIf {
    private static final UUID NOBODY = new UUID(0, 0);

    private final CarRecords records;
    private final Calibrations calibrations;
    private final Catalog catalog;
    private final Vehicles vehicles;
    private final Clock clock;

    WhatIf(CarRecords records, Calibrations calibrations, Catalog catalog, Vehicles vehicles, Clock clock) {
        this.records = records;
        this.calibrations = calibrations;
        this.catalog = catalog;
        this.vehicles = vehicles;
        this.clock = clock;
    }

    /** @throws Refusal where the question names what is not there, or does not say what it is about */
    Hypothesis of(AdviceRequest question) {
        CarRecord record = record(question);
        Optional<Revision> named = Optional.ofNullable(question.calibrationId())
                .map(id -> calibrations
                        .revision(id)
                        .orElseThrow(() -> Refusal.invalid("calibrationId", "flash.unknown-calibration")));
        if (question.changes().isEmpty() && named.isEmpty()) {
            throw Refusal.invalid("proposed", "advice.nothing-proposed");
        }
        List<Proposal> proposals = new ArrayList<>();
        for (int i = 0; i < question.changes().size(); i++) {
            proposals.add(proposal(question.changes().get(i), "proposed[" + i + "]."));
        }
        AsOf now = AsOf.of(record, clock, null, null);
        List<Change> changes = proposals.stream()
                .map(proposal ->
                        new Change(proposal.place(), proposal.action(), idOf(proposal.part()), proposal.ecuHardware()))
                .toList();
        CarRecord changed = with(record, changes, now.effectiveAt());
        return new Hypothesis(
                question.vehicleId(),
                question.vehicleId() == null
                        ? null
                        : vehicles.engine(question.vehicleId()).orElse(null),
                record.at(now.effectiveAt(), now.knownAt()),
                changed.at(now.effectiveAt(), now.knownAt()),
                proposals,
                named,
                record.groups());
    }

    private CarRecord record(AdviceRequest question) {
        String ecuHardware = Text.strip(question.ecuHardware());
        if (question.vehicleId() != null) {
            if (ecuHardware != null || !question.onTheCar().isEmpty()) {
                throw Refusal.invalid(ecuHardware != null ? "ecuHardware" : "parts", "advice.car-or-description");
            }
            return records.of(question.vehicleId());
        }
        if (ecuHardware == null) {
            throw Refusal.invalid("ecuHardware", "advice.which-car");
        }
        Registration described =
                new Registration(NOBODY, Baseline.FACTORY, ecuHardware, Reading.NOTHING, Instant.EPOCH);
        CarRecord factory = new CarRecord(described, List.of(), List.of(), catalog.effectGroups(), List.of());
        List<Change> fitted = new ArrayList<>();
        for (int i = 0; i < question.onTheCar().size(); i++) {
            fitted.add(fitted(question.onTheCar().get(i), "parts[" + i + "]."));
        }
        return with(factory, fitted, Instant.EPOCH);
    }

    /** A part on a car that nobody registered: a change of a factory car, long ago. */
    private Change fitted(FittedPart part, String prefix) {
        PartSpec spec = cited(part.category(), part.partSpecId(), prefix);
        Place place = place(part.category(), spec, part.position(), prefix);
        Fitted.State said =
                part.state() == null ? spec == null ? Fitted.State.UNKNOWN : Fitted.State.PART : part.state();
        if ((said == Fitted.State.PART) != (spec != null)) {
            throw Refusal.invalid(prefix + "partSpecId", "inspection.part");
        }
        Action action = switch (said) {
            case PART, UNKNOWN -> Action.FIT;
            case NONE -> Action.REMOVE;
            case FACTORY -> Action.REFIT_FACTORY;
        };
        return new Change(place, action, idOf(spec), null);
    }

    private Proposal proposal(Proposed proposed, String prefix) {
        PartSpec spec = cited(proposed.category(), proposed.partSpecId(), prefix);
        Place place = place(proposed.category(), spec, proposed.position(), prefix);
        if (proposed.ecuHardware() != null && place.category() != Category.ECU) {
            throw Refusal.invalid(prefix + "ecuHardware", "part-change.ecu-hardware-elsewhere");
        }
        return new Proposal(place, proposed.action(), spec, Text.strip(proposed.ecuHardware()));
    }

    private @Nullable PartSpec cited(@Nullable Category category, @Nullable UUID partSpecId, String prefix) {
        if (partSpecId == null) {
            return null;
        }
        String field = prefix + "partSpecId";
        PartSpec spec = catalog.spec(partSpecId).orElseThrow(() -> Refusal.invalid(field, "part-spec.unknown", field));
        return category == null ? spec : catalog.cited(partSpecId, category, field);
    }

    private static Place place(
            @Nullable Category category, @Nullable PartSpec spec, @Nullable String position, String prefix) {
        Category known = category == null && spec != null ? spec.category() : category;
        if (known == null) {
            throw Refusal.invalid(prefix + "category", "advice.which-place");
        }
        return Place.typed(known, position);
    }

    private static @Nullable UUID idOf(@Nullable PartSpec spec) {
        return spec == null ? null : spec.id();
    }

    /** A change that nobody made. */
    private record Change(
            Place place,
            Action action,
            @Nullable UUID partSpecId,
            @Nullable String ecuHardware) {
        /** Reported, not done: work of the shop would say that the car is here. */
        Fact.PartChanged fact(Stamp stamp) {
            return new Fact.PartChanged(
                    stamp,
                    place,
                    action,
                    partSpecId,
                    null,
                    ecuHardware,
                    Fact.Source.CUSTOMER_REPORTED,
                    null,
                    null,
                    null);
        }
    }

    private static CarRecord with(CarRecord record, List<Change> changes, Instant at) {
        List<Fact> facts = new ArrayList<>(record.facts());
        long seq = facts.stream().mapToLong(fact -> fact.stamp().seq()).max().orElse(0);
        for (Change change : changes) {
            seq++;
            facts.add(change.fact(new Stamp(Ids.next(), record.registration().vehicleId(), seq, at, at, NOBODY)));
        }
        return record.with(facts);
    }
}
