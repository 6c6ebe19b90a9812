package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.PersonalData;
import org.bayhold.obd.Reading;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Revisions as answered. */
@Component
class CalibrationViews {
    private final PersonalData personalData;
    private final CanonicalJson json;

    CalibrationViews(PersonalData personalData, CanonicalJson json) {
        this.personalData = personalData;
        this.json = json;
    }

    @SuppressWarnings("unchecked") // assumes is written as a JSON object
    CalibrationView view(CalibrationRow row, @Nullable WithdrawalRow withdrawal) {
        Revision revision = row.revision(withdrawal == null ? null : withdrawal.withdrawnAt());
        List<java.util.@Nullable UUID> ids = new ArrayList<>();
        ids.add(row.noteId());
        ids.add(withdrawal == null ? null : withdrawal.reasonId());
        PersonalData.Texts texts = personalData.readIds(ids);
        Reading reading = revision.reading();
        return new CalibrationView(
                revision.id(),
                revision.name(),
                revision.revision(),
                revision.ecuHardware(),
                reading.calid(),
                reading.cvn(),
                reading.fileSha256(),
                revision.purpose(),
                row.limits(),
                revision.coverage().stream()
                        .map(line -> new CalibrationView.Line(
                                line.place().category(),
                                line.place().position(),
                                line.partSpecIds(),
                                line.factoryAllowed(),
                                line.noneAllowed()))
                        .toList(),
                json.read(row.assumes(), Map.class),
                row.boostTargetKpa(),
                texts.of(row.noteId()),
                revision.recordedAt(),
                revision.withdrawnAt(),
                withdrawal == null ? null : texts.of(withdrawal.reasonId()),
                reading.oddities());
    }
}
