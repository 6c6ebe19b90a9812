package org.bayhold.drives;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongConsumer;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CarWrites;
import org.bayhold.buildsheet.Consequences;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.calibration.Revision;
import org.bayhold.identity.Call;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Puts drives on record. A file is judged before anything is locked, against the car as it was driven; under the car's lock
 * that is looked at again, and where it has changed meanwhile the file is judged anew.
 */
@Component
class LoggedDrives {
    private static final int TRIES = 3;

    private final LogJudging judging;
    private final LogFiles files;
    private final Judgements judgements;
    private final CarRecords records;
    private final CarWrites writes;
    private final Consequences consequences;
    private final DriveLogViews views;
    private final Clock clock;

    LoggedDrives(
            LogJudging judging,
            LogFiles files,
            Judgements judgements,
            CarRecords records,
            CarWrites writes,
            Consequences consequences,
            DriveLogViews views,
            Clock clock) {
        this.judging = judging;
        this.files = files;
        this.judgements = judgements;
        this.records = records;
        this.writes = writes;
        this.consequences = consequences;
        this.views = views;
        this.clock = clock;
    }

    /**
     * Judges a file that was received, and puts the drive on record. One that is on record for this car is recognised: read in
     * the same way it is not judged once more, read in another way it is judged again.
     *
     * @param progress is told the bytes of the file that are judged so far
     * @throws Refusal INVALID where the file is no log, or the request cannot be right; then nothing is kept
     */
    DriveLogView record(Call call, UUID vehicleId, String sha256, DriveLogRequest request, LongConsumer progress) {
        return writes.answered(call.request(), DriveLogView.class).orElseGet(() -> {
            CarState now = now(vehicleId);
            return recognised(now, sha256, request)
                    .orElseGet(() -> judgedAndWritten(
                            call,
                            vehicleId,
                            new Drive(sha256, ofFile(now, sha256).orElse(null)),
                            request,
                            progress));
        });
    }

    /** Judges a drive that is on record once more: by another policy, or read in another way. The old verdict stays. */
    DriveLogView again(Call call, UUID vehicleId, UUID driveId, DriveLogRequest reading, LongConsumer progress) {
        return writes.answered(call.request(), DriveLogView.class).orElseGet(() -> {
            DriveLogged last = drive(now(vehicleId), driveId);
            return judgedAndWritten(call, vehicleId, new Drive(last.fileSha256(), last), reading, progress);
        });
    }

    /** @param last the judgement before, where it is judged again */
    private record Drive(String sha256, @Nullable DriveLogged last) {
        @Nullable Instant effectiveAt(DriveLogRequest request) {
            return last == null ? request.effectiveAt() : last.stamp().effectiveAt();
        }
    }

    private DriveLogView judgedAndWritten(
            Call call, UUID vehicleId, Drive drive, DriveLogRequest request, LongConsumer progress) {
        for (int attempt = 1; attempt <= TRIES; attempt++) {
            JudgedFile file = judging.judge(vehicleId, drive.sha256(), drive.effectiveAt(request), request, progress);
            files.keep(drive.sha256());
            try {
                return writes.write(
                                call.request(),
                                vehicleId,
                                List.of(),
                                DriveLogView.class,
                                car -> write(car, drive, file, request))
                        .value();
            } catch (ChangedMeanwhileException changed) {
                progress.accept(0);
            }
        }
        throw Refusal.conflict("file", "drive-log.changed-meanwhile");
    }

    private DriveLogView write(OpenCar car, Drive drive, JudgedFile file, DriveLogRequest request) {
        if (drive.last() == null) {
            // another upload of the file may have been faster
            Optional<DriveLogView> known = recognised(car.now(), drive.sha256(), request);
            if (known.isPresent()) {
                return known.get();
            }
        }
        Optional<DriveLogged> onRecord = ofFile(car.now(), drive.sha256());
        if (onRecord.map(DriveLogged::drive)
                .equals(Optional.ofNullable(drive.last()).map(DriveLogged::drive))) {
            return append(car, onRecord.orElse(null), file, request);
        }
        throw Refusal.conflict("file", "drive-log.changed-meanwhile");
    }

    private DriveLogView append(OpenCar car, @Nullable DriveLogged last, JudgedFile file, DriveLogRequest request) {
        Instant at = last == null
                ? car.chain().effectiveAt(request.effectiveAt())
                : last.stamp().effectiveAt();
        CarState then = car.at(at);
        if (!Objects.equals(then.revision().map(Revision::id).orElse(null), file.calibrationId())) {
            throw new ChangedMeanwhileException();
        }
        DriveLogged fact = file.fact(car, at, request, last);
        boolean wasOut = !then.stay().inShop();
        car.append(fact);
        judgements.keep(fact, file.written());
        UUID item = consequences.of(car, fact).retuneItemId();
        return views.written(
                fact, file.judged(), item, wasOut && car.at(at).stay().implied());
    }

    /** The record of a file that is on record for this car, where it need not be judged once more. */
    private Optional<DriveLogView> recognised(CarState car, String sha256, DriveLogRequest request) {
        Optional<DriveLogged> known = ofFile(car, sha256);
        if (known.isEmpty()) {
            return Optional.empty();
        }
        Instant driven = known.get().stamp().effectiveAt();
        boolean flashedSince =
                car.flashedAt().filter(flash -> !flash.isBefore(driven)).isPresent();
        boolean anotherTime =
                request.effectiveAt() != null && !request.effectiveAt().equals(driven);
        if (flashedSince || anotherTime) {
            throw Refusal.conflict("file", "drive-log.one-drive", driven);
        }
        return isReadSo(known.get(), request) ? Optional.of(views.onRecord(known.get())) : Optional.empty();
    }

    private boolean isReadSo(DriveLogged known, DriveLogRequest request) {
        return Set.copyOf(known.columns()).equals(Set.copyOf(judging.said(request, judgements.of(known))))
                && Objects.equals(known.sampleSeconds(), request.sampleSeconds())
                && (request.map() == null || Objects.equals(Text.alike(request.map()), Text.alike(known.map())));
    }

    private static Optional<DriveLogged> ofFile(CarState car, String sha256) {
        return car.driveLogs().stream()
                .filter(log -> log.fileSha256().equals(sha256))
                .findFirst();
    }

    private static DriveLogged drive(CarState car, UUID driveId) {
        return car.driveLogs().stream()
                .filter(log -> log.drive().equals(driveId))
                .findFirst()
                .orElseThrow(() -> Refusal.notFound("drive-log.not-found"));
    }

    private CarState now(UUID vehicleId) {
        CarRecord record = records.of(vehicleId);
        AsOf now = AsOf.of(record, clock, null, null);
        return record.at(now.effectiveAt(), now.knownAt());
    }

    /** Between the judgement and the lock something was recorded that makes it one of another calibration. */
    private static final class ChangedMeanwhileException extends RuntimeException {
        private static final long serialVersionUID = 1;
    }
}
