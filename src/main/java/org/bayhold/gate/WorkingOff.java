package org.bayhold.gate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CarWrites;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.CarsRunning;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Correction;
import org.bayhold.identity.Caller;
import org.bayhold.journal.FollowUp;
import org.bayhold.journal.FollowUpWorker;
import org.bayhold.journal.FollowUps;
import org.bayhold.journal.WriteRequest;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/**
 * Opens the items that follow from a withdrawal, a correction or a move of a category, car by car. Each car is looked at
 * under its own lock, and a cause that is there already is not recorded again, so that the work can be done over.
 */
@Component
class WorkingOff implements FollowUpWorker, CarsRunning {
    private static final Logger LOG = LoggerFactory.getLogger(WorkingOff.class);

    private final FollowUps followUps;
    private final CarRecords records;
    private final CarWrites writes;
    private final OpeningItems openingItems;
    private final Decisions decisions;
    private final Calibrations calibrations;
    private final Catalog catalog;
    private final Vehicles vehicles;

    WorkingOff(
            FollowUps followUps,
            CarRecords records,
            CarWrites writes,
            OpeningItems openingItems,
            Decisions decisions,
            Calibrations calibrations,
            Catalog catalog,
            Vehicles vehicles) {
        this.followUps = followUps;
        this.records = records;
        this.writes = writes;
        this.openingItems = openingItems;
        this.decisions = decisions;
        this.calibrations = calibrations;
        this.catalog = catalog;
        this.vehicles = vehicles;
    }

    @Override
    public void workOff(UUID subjectId) {
        followUps.openOf(subjectId).forEach(this::workOff);
    }

    /** Takes up what a crash, or a database that was away, left undone. */
    @EventListener(ApplicationReadyEvent.class)
    @Scheduled(fixedDelayString = "PT30S", initialDelayString = "PT30S")
    void workOffWhatIsLeft() {
        for (FollowUp followUp : followUps.open()) {
            try {
                workOff(followUp);
            } catch (RuntimeException e) {
                LOG.warn("{} of {} stays to be done", followUp.kind(), followUp.subjectId(), e);
            }
        }
    }

    private void workOff(FollowUp followUp) {
        switch (followUp.kind()) {
            case WITHDRAWAL ->
                calibrations
                        .revision(followUp.subjectId())
                        .ifPresent(revision -> records.vehiclesNamingRevision(revision)
                                .forEach(car -> look(followUp, car, open -> withdrawn(open, revision))));
            case CORRECTION ->
                catalog.correction(followUp.subjectId())
                        .ifPresent(correction -> records.vehiclesNamingPart(correction.partSpecId())
                                .forEach(car -> look(followUp, car, open -> corrected(open, correction))));
            case CATEGORY_MOVE ->
                catalog.movedCategory(followUp.subjectId())
                        .ifPresent(category -> records.vehiclesNamingCategory(category)
                                .forEach(car -> look(followUp, car, open -> moved(open, followUp, category))));
        }
        followUps.done(followUp);
    }

    /** What became of one car. */
    private record Looked(boolean caused) {}

    private void look(FollowUp followUp, UUID vehicleId, Function<OpenCar, Optional<Cause>> cause) {
        WriteRequest request = WriteRequest.internal(followUp.askedBy());
        Looked looked = writes.write(request, vehicleId, List.of(), Looked.class, car -> {
                    Optional<Cause> found = cause.apply(car);
                    found.ifPresent(c -> {
                        UUID ignored = openingItems.openOrJoin(car, List.of(c));
                    });
                    return new Looked(found.isPresent());
                })
                .value();
        LOG.debug("{} {}: car {} {}", followUp.kind(), followUp.subjectId(), vehicleId, looked);
    }

    private static Optional<Cause> withdrawn(OpenCar car, Revision revision) {
        Instant withdrawnAt = revision.withdrawnAt();
        boolean runs =
                car.now().revision().filter(r -> r.id().equals(revision.id())).isPresent();
        return withdrawnAt == null || !runs
                ? Optional.empty()
                : Optional.of(new Cause(Cause.Code.REVISION_WITHDRAWN, revision.id(), withdrawnAt));
    }

    private static Optional<Cause> corrected(OpenCar car, Correction correction) {
        return Replay.unanswered(car.record(), car.now()).stream()
                .filter(correction::equals)
                .findFirst()
                .map(c -> new Cause(Cause.Code.PART_SPEC_CORRECTED, c.id(), c.recordedAt()));
    }

    /** A category that has an effect now may leave a car without a matching calibration. */
    private Optional<Cause> moved(OpenCar car, FollowUp followUp, Category category) {
        Instant now = car.chain().recordedAt();
        CarState state = car.now();
        boolean names =
                state.lines().stream().anyMatch(line -> line.place().category() == category && line.hasEffect());
        return names && state.openItem().isEmpty() && Causes.isUnmatched(decisions.of(car.record(), now, now))
                ? Optional.of(new Cause(Cause.Code.CATEGORY_MOVED, followUp.subjectId(), now))
                : Optional.empty();
    }

    @Override
    public List<VehicleView> of(Revision revision, Caller caller) {
        List<UUID> running = new ArrayList<>();
        for (UUID vehicleId : records.vehiclesNamingRevision(revision)) {
            Decision now = decisions.of(vehicleId, null, null);
            if (now.car().revision().filter(r -> r.id().equals(revision.id())).isPresent()) {
                running.add(vehicleId);
            }
        }
        Map<UUID, VehicleView> views = vehicles.views(running, caller);
        return running.stream()
                .flatMap(id -> Optional.ofNullable(views.get(id)).stream())
                .toList();
    }
}
