package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Call;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Written;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Records a fact of any kind: checked against the car under its lock, appended, with its consequences, answered. */
@Component
class RecordFacts {
    private final CarWrites writes;
    private final Consequences consequences;
    private final FactViews views;
    private final Vehicles vehicles;
    private final CanonicalJson json;

    RecordFacts(CarWrites writes, Consequences consequences, FactViews views, Vehicles vehicles, CanonicalJson json) {
        this.writes = writes;
        this.consequences = consequences;
        this.views = views;
        this.vehicles = vehicles;
        this.json = json;
    }

    <R extends FactRequest, V> Written<V> record(Call call, UUID vehicleId, Recorder<R, V> recorder, R request) {
        return writes.write(call.request(), vehicleId, recorder.cites(request), recorder.view(), car -> {
            Appended appended = append(car, recorder, request, Ids.next());
            Consequences.Effect effect = consequences.of(car, appended.fact());
            return json.read(answer(car, recorder, request, appended, effect), recorder.view());
        });
    }

    /** The answers to several facts that were recorded in one write. */
    record Several(List<ObjectNode> answers) {
        List<String> warnings() {
            return answers.stream()
                    .flatMap(answer -> answer.withArray("warnings").valueStream())
                    .map(JsonNode::asString)
                    .toList();
        }
    }

    /**
     * Several facts of one kind in one write, in the order given: all of them, or none where one is refused. The fields of a
     * refusal then begin with {@code facts[i].}
     */
    <R extends FactRequest, V> Written<Several> recordAll(
            Call call, UUID vehicleId, Recorder<R, V> recorder, List<R> requests) {
        Set<UUID> cites = new HashSet<>();
        requests.forEach(request -> cites.addAll(recorder.cites(request)));
        return writes.write(call.request(), vehicleId, cites, Several.class, car -> {
            List<ObjectNode> answers = new ArrayList<>();
            for (R request : requests) {
                Appended appended;
                try {
                    appended = append(car, recorder, request, Ids.next());
                } catch (Refusal refusal) {
                    throw refusal.within("facts[" + answers.size() + "].");
                }
                Consequences.Effect effect = consequences.of(car, appended.fact());
                answers.add(answer(car, recorder, request, appended, effect));
            }
            return new Several(answers);
        });
    }

    /** A fact that was appended, and the car as it stood before at the fact's effective time. */
    record Appended(Fact fact, CarState before, List<Fact> earlier) {}

    <R extends FactRequest> Appended append(OpenCar car, Recorder<R, ?> recorder, R request, UUID id) {
        Instant at = car.chain().effectiveAt(request.effectiveAt());
        CarState before = car.at(at);
        List<Fact> earlier = car.record().facts();
        Fact fact = recorder.fact(car, before, car.stamp(id, at), request);
        car.append(fact);
        return new Appended(fact, before, earlier);
    }

    <R extends FactRequest> ObjectNode answer(
            OpenCar car, Recorder<R, ?> recorder, R request, Appended appended, Consequences.Effect effect) {
        Fact fact = appended.fact();
        ObjectNode answer = views.flat(List.of(fact)).get(0);
        UUID item = effect.retuneItemId();
        answer.put("retuneItemId", item == null ? null : item.toString());
        ArrayNode warnings = answer.putArray("warnings");
        if (ranBackwards(car, appended, request.odometerKm())) {
            warnings.add("ODOMETER_RAN_BACKWARDS");
        }
        if (!appended.before().stay().inShop() && arrives(car, fact)) {
            warnings.add("ARRIVAL_IMPLIED");
        }
        recorder.describe(car, appended.before(), fact, answer);
        return answer;
    }

    private boolean ranBackwards(OpenCar car, Appended appended, @Nullable Integer km) {
        return km != null
                && Odometer.runsBackwards(
                        appended.earlier(),
                        appended.fact().stamp().effectiveAt(),
                        km,
                        vehicles.registeredOdometerKm(car.vehicleId()).orElse(null));
    }

    private static boolean arrives(OpenCar car, Fact fact) {
        return !(fact instanceof Fact.Arrived)
                && car.at(fact.stamp().effectiveAt()).stay().implied();
    }
}
