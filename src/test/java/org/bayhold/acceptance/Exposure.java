package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bayhold.support.Answer;
import org.bayhold.support.Audit;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The cars that are on the road now without a matching calibration, for whoever has to call their owners. */
public abstract class Exposure implements OnADatabase {

    @Test
    void aCarIsOnTheListWhileItIsOutAndDoesNotMatch() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("DOWNPIPE"));
        assertThat(exposed(car)).isEmpty();

        Answer handoff = car.asksToLeaveByException(exception()).is(201);
        JsonNode exposure = exposed(car).orElseThrow();
        assertThat(Answer.textOf(exposure.path("handoffId"))).isEqualTo(handoff.id());
        assertThat(Answer.textOf(exposure.path("unmatchedSince"))).isEqualTo(handoff.field("effectiveAt"));
        assertThat(exposure.path("findings").toString()).contains("EXCEPTION");
        assertThat(exposure.path("daysUnmatched").isNumber()).isTrue();

        shop().as(Role.WRITER).post(car.path("arrivals"), Body.empty()).is(201);
        assertThat(exposed(car)).isEmpty();
    }

    @Test
    void aWithdrawalPutsEveryCarOnTheListThatRunsTheRevision() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();
        assertThat(exposed(finished.car())).isEmpty();

        shop().withdraws(finished.calibration());

        assertThat(exposed(finished.car())).isPresent();
    }

    @Test
    void aCustomersReportPutsACarOnTheList() {
        FinishedCar finished = shop().finishesACar();
        finished.car().handsOver();

        Answer change =
                finished.car().changes(fit(shop().aPartFor("TURBOCHARGER")).reported());

        assertThat(Answer.textOf(exposed(finished.car()).orElseThrow().path("unmatchedSince")))
                .isEqualTo(change.field("effectiveAt"));
    }

    @Test
    void theLongestComesFirst() {
        Car first = leftUnmatched();
        Car second = leftUnmatched();

        List<Instant> since = list(Role.MANAGER).stream()
                .map(exposure -> Instant.parse(Answer.textOf(exposure.path("unmatchedSince"))))
                .toList();
        assertThat(since).isSortedAccordingTo(Comparator.naturalOrder()).hasSizeGreaterThanOrEqualTo(2);
        List<String> cars = list(Role.MANAGER).stream()
                .map(exposure -> Answer.textOf(exposure.path("vehicle").path("id")))
                .toList();
        assertThat(cars).containsOnlyOnce(first.id()).containsOnlyOnce(second.id());
        assertThat(cars.indexOf(first.id())).isLessThan(cars.indexOf(second.id()));
    }

    @Test
    void onlyWhoMaySeeContactsSeesThem() {
        Car car = leftUnmatched();

        JsonNode forTheManager =
                of(car, Role.MANAGER).orElseThrow().path("vehicle").path("customer");
        assertThat(Answer.textOf(forTheManager.path("phone"))).isNotEmpty();
        assertThat(Answer.textOf(forTheManager.path("email"))).isNotEmpty();
        JsonNode forTheAuditor =
                of(car, Role.AUDITOR).orElseThrow().path("vehicle").path("customer");
        assertThat(Answer.textOf(forTheAuditor.path("phone"))).isEmpty();
        assertThat(Answer.textOf(forTheAuditor.path("email"))).isEmpty();
    }

    /** The list looks only at cars with an open item; whoever looks at all of them must find no others. */
    @Test
    void noCarIsForgotten() {
        leftUnmatched();
        List<String> everyCar = new Audit(shop())
                .rows("").stream()
                        .filter(row -> !row.text("stillUnmatchedSince").isEmpty())
                        .map(row -> Answer.textOf(row.json().path("vehicle").path("id")))
                        .distinct()
                        .toList();

        List<String> listed = new ArrayList<>();
        list(Role.AUDITOR)
                .forEach(exposure ->
                        listed.add(Answer.textOf(exposure.path("vehicle").path("id"))));

        assertThat(listed).containsExactlyInAnyOrderElementsOf(everyCar);
    }

    private Car leftUnmatched() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("DOWNPIPE"));
        car.asksToLeaveByException(exception()).is(201);
        return car;
    }

    private Optional<JsonNode> exposed(Car car) {
        return of(car, Role.MANAGER);
    }

    private Optional<JsonNode> of(Car car, Role role) {
        return list(role).stream()
                .filter(exposure ->
                        Answer.textOf(exposure.path("vehicle").path("id")).equals(car.id()))
                .findFirst();
    }

    private List<JsonNode> list(Role role) {
        return shop().as(role).list("/audit/exposures");
    }
}
