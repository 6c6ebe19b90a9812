package org.bayhold.buildsheet;

import jakarta.validation.Validator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Journal;
import org.bayhold.journal.Personal;
import org.bayhold.journal.Written;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Constraints;
import org.bayhold.refusal.JsonReasons;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Striking out wrong records, with the right one in the same write where there is one. */
@Component
class Voidings {
    private static final Set<Class<? extends Fact>> VOIDABLE = Set.of(
            Fact.Arrived.class,
            Fact.PartChanged.class,
            Fact.Inspected.class,
            Fact.Flashed.class,
            Fact.ReadBack.class,
            DriveLogged.class,
            Fact.Acknowledged.class,
            Fact.Voided.class,
            Fact.Cleared.class,
            Fact.HandedOver.class);

    private final Journal journal;
    private final CarWrites writes;
    private final RecordFacts recordFacts;
    private final List<Recorder<?, ?>> recorders;
    private final Consequences consequences;
    private final FactViews views;
    private final Validator validator;
    private final JsonMapper json;

    Voidings(
            Journal journal,
            CarWrites writes,
            RecordFacts recordFacts,
            List<Recorder<?, ?>> recorders,
            Consequences consequences,
            FactViews views,
            Validator validator,
            JsonMapper json) {
        this.journal = journal;
        this.writes = writes;
        this.recordFacts = recordFacts;
        this.recorders = recorders;
        this.consequences = consequences;
        this.views = views;
        this.validator = validator;
        this.json = json;
    }

    /** The right record, as it will be recorded: a recorder with a request of its own kind. */
    private record Replacement<R extends FactRequest>(Recorder<R, ?> recorder, R request) {
        Set<UUID> cites() {
            return recorder.cites(request);
        }

        RecordFacts.Appended append(RecordFacts recordFacts, OpenCar car, UUID id) {
            return recordFacts.append(car, recorder, request, id);
        }

        JsonNode answer(
                RecordFacts recordFacts, OpenCar car, RecordFacts.Appended appended, Consequences.Effect effect) {
            return recordFacts.answer(car, recorder, request, appended, effect);
        }
    }

    static boolean isVoidable(String kind) {
        Class<? extends Fact> fact = FactKinds.named(kind);
        return fact != null && VOIDABLE.contains(fact);
    }

    Written<VoidingView> strikeOut(Call call, UUID recordId, String reason, @Nullable JsonNode replacementBody) {
        call.caller().mustSign(Act.STRIKE_OUT);
        UUID chainId = journal.chainOf(recordId).orElseThrow(() -> Refusal.notFound("record.not-found"));
        Fact target = writes.fact(chainId, recordId);
        if (!VOIDABLE.contains(target.getClass())) {
            throw Refusal.conflict("id", "voiding.not-voidable");
        }
        Replacement<?> replacement = replacementBody == null ? null : replacement(target, replacementBody);
        Set<UUID> cites = replacement == null ? Set.of() : replacement.cites();
        return writes.write(call.request(), chainId, cites, VoidingView.class, car -> {
            if (Fold.voided(car.record().facts(), car.chain().recordedAt()).contains(recordId)) {
                throw new Refusal(Code.CONFLICT, List.of(new Refusal.Reason("id", "voiding.twice", List.of())));
            }
            return strikeOut(car, target, reason, replacement);
        });
    }

    /** The wrong record goes first; once both are on record, they have their consequences. */
    private VoidingView strikeOut(OpenCar car, Fact target, String reason, @Nullable Replacement<?> replacement) {
        UUID rightId = replacement == null ? null : Ids.next();
        Personal why = car.chain().keepText(reason.strip());
        Fact.Voided voided = new Fact.Voided(
                car.stamp(car.chain().recordedAt()), target.stamp().id(), why, rightId);
        car.append(voided);
        RecordFacts.Appended right =
                replacement == null || rightId == null ? null : replacement.append(recordFacts, car, rightId);
        JsonNode rightAnswer = null;
        if (replacement != null && right != null) {
            rightAnswer = replacement.answer(recordFacts, car, right, consequences.of(car, right.fact()));
        }
        UUID item = consequences.of(car, voided).retuneItemId();
        return new VoidingView(
                voided.stamp().id(),
                target.stamp().id(),
                FactKinds.of(target),
                target.stamp().vehicleId(),
                voided.stamp().recordedAt(),
                views.flat(List.of(voided)).get(0).get("by").asString(),
                reason.strip(),
                voided.replacedBy(),
                rightAnswer,
                item);
    }

    private Replacement<?> replacement(Fact target, JsonNode body) {
        return recorders.stream()
                .filter(recorder -> recorder.kind() == target.getClass())
                .findFirst()
                .<Replacement<?>>map(recorder -> replacement(recorder, body))
                .orElseThrow(() -> Refusal.invalid("replacement", "voiding.no-replacement"));
    }

    private <R extends FactRequest> Replacement<R> replacement(Recorder<R, ?> recorder, JsonNode body) {
        R request;
        try {
            request = json.treeToValue(body, recorder.request());
        } catch (JacksonException e) {
            throw JsonReasons.of(e).within("replacement.");
        }
        Constraints.hold(validator, request, "replacement.");
        return new Replacement<>(recorder, request);
    }
}
