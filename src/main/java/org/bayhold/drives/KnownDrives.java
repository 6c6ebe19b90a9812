package org.bayhold.drives;

import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reading judged drives. */
@Component
@Transactional(readOnly = true)
public class KnownDrives {
    private final CarRecords records;
    private final DriveLogViews views;
    private final Judgements judgements;

    KnownDrives(CarRecords records, DriveLogViews views, Judgements judgements) {
        this.records = records;
        this.views = views;
        this.judgements = judgements;
    }

    /** Every judgement of every drive of a car, those struck out as well, the newest first. */
    List<DriveLogView> of(UUID vehicleId) {
        return facts(vehicleId).stream().map(views::of).toList();
    }

    DriveLogView view(UUID vehicleId, UUID id) {
        return views.of(fact(vehicleId, id));
    }

    /** @throws Refusal NOT_FOUND where the car has no such drive */
    DriveLogged fact(UUID vehicleId, UUID id) {
        return facts(vehicleId).stream()
                .filter(fact -> fact.stamp().id().equals(id))
                .findFirst()
                .orElseThrow(() -> Refusal.notFound("drive-log.not-found"));
    }

    /** Every judgement of one drive, the newest first. */
    List<DriveLogged> judgements(UUID vehicleId, UUID driveId) {
        return facts(vehicleId).stream()
                .filter(fact -> fact.drive().equals(driveId))
                .toList();
    }

    /** @throws Refusal UNAVAILABLE where what is kept is not what the journal says */
    public Judged judged(DriveLogged fact) {
        return judgements.of(fact);
    }

    private List<DriveLogged> facts(UUID vehicleId) {
        return records.of(vehicleId).facts().stream()
                .filter(DriveLogged.class::isInstance)
                .map(DriveLogged.class::cast)
                .sorted(Comparator.comparing((DriveLogged fact) -> fact.stamp().seq())
                        .reversed())
                .toList();
    }
}
