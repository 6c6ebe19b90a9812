package org.bayhold.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.identity.Caller;
import org.bayhold.identity.People;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.PersonalData;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads answers that were kept. */
@Component
class Advices {
    private final AdviceRows rows;
    private final Plans plans;
    private final PersonalData personalData;
    private final People people;
    private final Letters letters;
    private final CanonicalJson json;

    Advices(
            AdviceRows rows,
            Plans plans,
            PersonalData personalData,
            People people,
            Letters letters,
            CanonicalJson json) {
        this.rows = rows;
        this.plans = plans;
        this.personalData = personalData;
        this.people = people;
        this.letters = letters;
        this.json = json;
    }

    /** @throws Refusal NOT_FOUND where there is no such answer */
    AdviceView get(UUID id, Caller caller) {
        return views(List.of(row(id)), caller).get(0);
    }

    /** @throws Refusal NOT_FOUND where there is no such answer */
    Letter letter(UUID id, Caller caller) {
        AdviceRow row = row(id);
        return letter(
                row,
                json.read(row.body(), AdviceBody.class),
                texts(List.of(row)),
                by(row, names(List.of(row))),
                caller);
    }

    List<AdviceView> views(List<AdviceRow> found, Caller caller) {
        PersonalData.Texts texts = texts(found);
        Map<UUID, String> names = names(found);
        return found.stream().map(row -> view(row, texts, names, caller)).toList();
    }

    private AdviceRow row(UUID id) {
        return rows.findById(id).orElseThrow(() -> Refusal.notFound("advice.not-found"));
    }

    private Map<UUID, String> names(List<AdviceRow> found) {
        return people.names(found.stream().map(AdviceRow::recordedBy).toList());
    }

    private static String by(AdviceRow row, Map<UUID, String> names) {
        return names.getOrDefault(row.recordedBy(), row.recordedBy().toString());
    }

    private PersonalData.Texts texts(List<AdviceRow> found) {
        List<@Nullable UUID> ids = new ArrayList<>();
        found.forEach(row -> {
            ids.add(row.questionId());
            ids.add(row.askedById());
        });
        return personalData.readIds(ids);
    }

    private AdviceView view(AdviceRow row, PersonalData.Texts texts, Map<UUID, String> names, Caller caller) {
        AdviceBody body = json.read(row.body(), AdviceBody.class);
        return new AdviceView(
                row.getId(),
                row.vehicleId(),
                body,
                texts.of(row.questionId()),
                texts.of(row.askedById()),
                letter(row, body, texts, by(row, names), caller).text(),
                "/api/v1/advice/" + row.getId() + "/letter",
                row.recordedAt(),
                by(row, names),
                plans.standingOf(row.getId()).stream()
                        .findFirst()
                        .map(PlanRow::recordedAt)
                        .orElse(null));
    }

    private Letter letter(AdviceRow row, AdviceBody body, PersonalData.Texts texts, String by, Caller caller) {
        return letters.of(body, row.vehicleId(), texts.of(row.questionId()), row.recordedAt(), by, caller);
    }
}
