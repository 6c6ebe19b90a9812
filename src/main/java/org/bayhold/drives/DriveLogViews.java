package org.bayhold.drives;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.FactViews;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Missing;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Judged drives as they are answered. */
@Component
class DriveLogViews {
    private final FactViews facts;
    private final Judgements judgements;
    private final DriveLogRows rows;
    private final LogWords words;

    DriveLogViews(FactViews facts, Judgements judgements, DriveLogRows rows, LogWords words) {
        this.facts = facts;
        this.judgements = judgements;
        this.rows = rows;
        this.words = words;
    }

    DriveLogView of(DriveLogged fact) {
        return view(fact, judgements.of(fact), null, List.of());
    }

    DriveLogView onRecord(DriveLogged fact) {
        return view(fact, judgements.of(fact), null, List.of(DriveLogView.ON_RECORD));
    }

    DriveLogView written(DriveLogged fact, Judged judged, @Nullable UUID retuneItemId, boolean arrivalImplied) {
        List<String> warnings = new ArrayList<>();
        if (arrivalImplied) {
            warnings.add("ARRIVAL_IMPLIED");
        }
        if (rows.isOnAnotherCar(fact.fileSha256(), fact.stamp().vehicleId())) {
            warnings.add(DriveLogView.ON_ANOTHER_CAR);
        }
        return view(fact, judged, retuneItemId, warnings);
    }

    private DriveLogView view(DriveLogged fact, Judged judged, @Nullable UUID retuneItemId, List<String> warnings) {
        ObjectNode flat = facts.flat(List.of(fact)).get(0);
        Judgement judgement = judged.judgement();
        return new DriveLogView(
                fact.stamp().id(),
                flat.get("kind").asString(),
                fact.stamp().vehicleId(),
                fact.stamp().effectiveAt(),
                fact.stamp().recordedAt(),
                flat.get("by").asString(),
                fact.again(),
                fact.fileSha256(),
                fact.fileBytes(),
                fact.calibrationId(),
                fact.map(),
                fact.verdict(),
                fact.missing().stream().map(Missing::code).toList(),
                fact.missing().stream()
                        .map(missing -> words.sentence(missing.sentence()))
                        .toList(),
                fact.risk(),
                judgement.findings().stream()
                        .map(finding -> new DriveLogView.FindingView(
                                finding.code(),
                                finding.risk(),
                                words.sentence(finding.sentence()),
                                finding.numbers(),
                                finding.rows()))
                        .toList(),
                judgement.unjudged().stream().sorted().toList(),
                fact.fit(),
                fact.headroomPercent(),
                fact.venue(),
                fact.columns(),
                fact.sampleSeconds(),
                fact.source(),
                text(flat, "performedBy"),
                text(flat, "note"),
                retuneItemId,
                warnings);
    }

    private static @Nullable String text(ObjectNode flat, String field) {
        JsonNode value = flat.get(field);
        return value == null || value.isNull() ? null : value.asString();
    }
}
