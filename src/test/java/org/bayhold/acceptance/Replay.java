package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.hoursAgo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.Gate;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** docs/rules.md, rule 14: the record as known then, under the rules of then, gives the decision of then. */
public abstract class Replay implements OnADatabase {

    @Test
    void everyDecisionAtADoorReplays() {
        Part part = shop().aPartFor("AIR_INTAKE");
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();
        finished.car().changes(fit(part).at(hoursAgo(2)));
        finished.car().asksToLeave().isHeld();
        finished.car().asksToLeaveByException(exception()).is(201);
        Car late = shop().registers(aCar());
        late.changes(fit(part).at(hoursAgo(1)));
        late.asksToLeave(Body.of("effectiveAt", hoursAgo(2))).isHeld();
        Car struck = shop().registers(aCar());
        Answer wrong = struck.fits(part);
        struck.asksToLeave().isHeld();
        struck.strikesOut(wrong);
        struck.handsOver();
        // what comes later must not change what was decided before
        shop().withdraws(finished.calibration());
        shop().corrects(part);
        shop().whilePolicySays("acknowledgementRequired", false, () -> {});

        int replayed = 0;
        for (JsonNode vehicle : everyCar()) {
            replayed += replay(Answer.textOf(vehicle.path("id")));
        }
        assertThat(replayed).isGreaterThanOrEqualTo(6);
    }

    private List<JsonNode> everyCar() {
        List<JsonNode> cars = new ArrayList<>();
        String next = "";
        do {
            JsonNode page =
                    shop().as(Role.AUDITOR).get("/vehicles?limit=200" + next).json();
            cars.addAll(Answer.elements(page.path("items")));
            next = page.path("next").isString() ? "&after=" + Answer.textOf(page.path("next")) : "";
        } while (!next.isEmpty());
        return cars;
    }

    private int replay(String vehicleId) {
        int replayed = 0;
        JsonNode history = shop().as(Role.AUDITOR)
                .get("/vehicles/" + vehicleId + "/history")
                .json();
        for (JsonNode record : Answer.elements(history.path("items"))) {
            JsonNode stored = record.path("record").path("gate");
            if (stored.isObject()) {
                Instant effectiveAt = Instant.parse(Answer.textOf(stored.path("effectiveAt")));
                // a handover that is recorded late is itself one that is over at the time of its recording
                Instant knownAt =
                        Instant.parse(Answer.textOf(record.path("recordedAt"))).minusNanos(1_000);
                Gate again = new Gate(shop().as(Role.AUDITOR)
                        .get("/vehicles/" + vehicleId + "/gate?effectiveAt=" + effectiveAt + "&knownAt=" + knownAt)
                        .is(200)
                        .json());
                Gate then = new Gate(stored);
                assertThat(again.outcomes()).as(vehicleId + " " + record).isEqualTo(then.outcomes());
                assertThat(again.decision()).isEqualTo(then.decision());
                replayed++;
            }
        }
        return replayed;
    }
}
