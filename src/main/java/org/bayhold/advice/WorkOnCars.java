package org.bayhold.advice;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.advice.AdviceBody.Change;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.catalog.Place;
import org.bayhold.gate.PlannedWork;
import org.bayhold.journal.CanonicalJson;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/** What is planned on a car. Nobody ticks it off: it is done when the car's own record says so. */
@Component
class WorkOnCars implements PlannedWork {
    private final Plans plans;
    private final AdviceRows rows;
    private final AdviceWords words;
    private final CanonicalJson json;

    WorkOnCars(Plans plans, AdviceRows rows, AdviceWords words, CanonicalJson json) {
        this.plans = plans;
        this.rows = rows;
        this.words = words;
        this.json = json;
    }

    @Override
    public List<Planned> on(CarState car) {
        return plans.standingOn(car.registration().vehicleId()).stream()
                .filter(plan -> !isDone(plan, car))
                .map(plan -> planned(plan, car.registration().vehicleId()))
                .toList();
    }

    private List<Change> changes(PlanRow plan) {
        AdviceRow answer = rows.findById(plan.adviceId()).orElseThrow();
        return json.read(answer.body(), AdviceBody.class).proposed();
    }

    private Planned planned(PlanRow plan, UUID vehicleId) {
        List<Change> changes = changes(plan);
        return new Planned(
                plan.adviceId(),
                plan.recordedAt(),
                "/answers/" + plan.adviceId(),
                changes.stream().map(words::change).toList(),
                install(vehicleId, changes));
    }

    /** The page <i>Log an install</i> with a line for each change. */
    static String install(UUID vehicleId, List<Change> changes) {
        UriComponentsBuilder page = UriComponentsBuilder.fromPath("/cars/{id}/install");
        for (int i = 0; i < changes.size(); i++) {
            Change change = changes.get(i);
            String line = "lines[" + i + "].";
            page.queryParam(line + "action", change.action());
            if (change.part() == null) {
                page.queryParam(line + "place", change.category());
            } else {
                page.queryParam(line + "part", change.part().replace(" · ", " "));
            }
            if (change.position() != null) {
                page.queryParam(line + "position", change.position());
            }
        }
        return page.encode().buildAndExpand(vehicleId).toUriString();
    }

    /** Of several changes at one place the last counts. */
    private boolean isDone(PlanRow plan, CarState car) {
        Map<Place, Change> last = new HashMap<>();
        changes(plan).forEach(change -> last.put(Place.typed(change.category(), change.position()), change));
        return last.entrySet().stream().allMatch(entry -> isDone(entry.getKey(), entry.getValue(), plan, car));
    }

    private static boolean isDone(Place place, Change change, PlanRow plan, CarState car) {
        boolean changed = car.changes().stream()
                .anyMatch(
                        made -> made.place().equals(place) && made.recordedAt().isAfter(plan.recordedAt()));
        return changed && isAsPlanned(change, car.fittedAt(place));
    }

    private static boolean isAsPlanned(Change change, Fitted fitted) {
        if (change.partSpecId() != null) {
            return fitted.equals(Fitted.part(change.partSpecId()));
        }
        return change.action() == Action.ADJUST
                || change.action() == Action.FIT
                || fitted.state() == (change.action() == Action.REMOVE ? Fitted.State.NONE : Fitted.State.FACTORY);
    }
}
