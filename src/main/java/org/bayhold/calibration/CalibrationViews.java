package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
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
    private final CalibrationRows rows;
    private final Withdrawals withdrawals;

    CalibrationViews(PersonalData personalData, CanonicalJson json, CalibrationRows rows, Withdrawals withdrawals) {
        this.rows = rows;
        this.withdrawals = withdrawals;
        this.personalData = personalData;
        this.json = json;
    }

    /** In the order of {@code ids}; unknown ids are left out. */
    List<CalibrationView> of(List<UUID> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        Map<UUID, CalibrationRow> found =
                rows.whole(ids).stream().collect(Collectors.toMap(CalibrationRow::getId, Function.identity()));
        return ids.stream()
                .filter(found::containsKey)
                .map(id -> view(
                        Objects.requireNonNull(found.get(id)),
                        withdrawals.findById(id).orElse(null)))
                .toList();
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
