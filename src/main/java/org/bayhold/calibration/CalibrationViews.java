package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
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

    CalibrationViews(PersonalData personalData, CanonicalJson json, CalibrationRows rows) {
        this.rows = rows;
        this.personalData = personalData;
        this.json = json;
    }

    /** In the order of {@code ids}; unknown ids are left out. */
    List<CalibrationView> of(List<UUID> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        Map<UUID, CalibrationRows.Whole> found = rows.whole(ids);
        return ids.stream()
                .map(found::get)
                .filter(Objects::nonNull)
                .map(Objects::requireNonNull)
                .map(this::view)
                .toList();
    }

    /** One that was issued just now. */
    CalibrationView view(CalibrationRow row) {
        return view(CalibrationRows.Whole.of(row, null));
    }

    CalibrationView view(CalibrationRows.Whole whole) {
        CalibrationRow row = whole.row();
        WithdrawalRow withdrawal = whole.withdrawal();
        Revision revision = whole.revision(json);
        List<MapRow.Stored> maps = whole.maps();
        Assumed assumed = row.assumed(json);
        List<@Nullable UUID> ids = new ArrayList<>();
        ids.add(row.noteId());
        maps.forEach(map -> ids.add(map.noteId()));
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
                maps.stream()
                        .map(stored -> new MapView(
                                stored.map().name(),
                                stored.map().fuels(),
                                stored.map().factoryFuel(),
                                texts.of(stored.noteId())))
                        .toList(),
                assumed.assumes(),
                assumed.boostTargetKpa(),
                texts.of(row.noteId()),
                revision.recordedAt(),
                revision.withdrawnAt(),
                withdrawal == null ? null : texts.of(withdrawal.reasonId()),
                reading.oddities());
    }
}
