package org.bayhold.buildsheet;

import java.util.Set;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;

/** Flashes. The shop does not write a revision into hardware that it was not issued for, nor one that was withdrawn. */
@Component
class FlashRecorder extends Recorder<FlashRequest, FlashView> {
    FlashRecorder() {
        super(FlashRequest.class, FlashView.class, Fact.Flashed.class);
    }

    @Override
    Set<UUID> cites(FlashRequest request) {
        return request.calibrationId() == null ? Set.of() : Set.of(request.calibrationId());
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, FlashRequest request) {
        Fact.Source source = request.source() == null ? Fact.Source.SHOP : request.source();
        if (request.calibrationId() == null) {
            if (Text.strip(request.note()) == null) {
                throw Refusal.invalid("note", "flash.note-for-foreign-file");
            }
        } else {
            Revision revision = cited(car, request.calibrationId());
            if (source == Fact.Source.SHOP) {
                refuseWrongRevision(car, before, stamp, revision);
            }
        }
        return new Fact.Flashed(
                stamp,
                request.calibrationId(),
                request.outcome(),
                source,
                request.adaptationsReset(),
                request.odometerKm(),
                car.chain().keep(Text.strip(request.performedBy())),
                car.chain().keep(Text.strip(request.note())));
    }

    private static Revision cited(OpenCar car, UUID calibrationId) {
        return car.record().revisions().stream()
                .filter(revision -> revision.id().equals(calibrationId))
                .findFirst()
                .orElseThrow(() -> Refusal.invalid("calibrationId", "flash.unknown-calibration"));
    }

    private static void refuseWrongRevision(OpenCar car, CarState before, Stamp stamp, Revision revision) {
        if (!revision.ecuHardware().equals(before.ecuHardware())) {
            throw Refusal.invalid(
                    "calibrationId", "flash.other-hardware", revision.ecuHardware(), before.ecuHardware());
        }
        if (revision.isWithdrawn(stamp.effectiveAt(), car.chain().recordedAt())) {
            throw Refusal.invalid("calibrationId", "flash.withdrawn", revision.name(), revision.revision());
        }
    }
}
