package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.minutesAgo;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 5: the gate and the handover. */
public abstract class Rule5Gate implements OnADatabase {

    @Test
    void aHandoverIsJudgedAtNow() {
        FinishedCar finished = shop().finishesACar();
        Instant whileItWasClear = Instant.now();
        finished.car().fits(shop().aPartFor("AIR_INTAKE"));

        finished.car().asksToLeave(Body.empty().at(whileItWasClear)).isHeld();

        assertThat(finished.car().handoffs()).isEmpty();
    }

    @Test
    void aHandoverIsJudgedAtItsOwnTime() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.changes(fit(intake).at(hoursAgo(5)));
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(intake)));

        car.asksToLeave(Body.empty().at(hoursAgo(2))).isHeld();

        assertThat(car.handoffs()).isEmpty();
        car.handsOver();
    }

    @Test
    void aSignatureGivenLaterDoesNotCountForTheTimeBefore() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.changes(fit(intake).at(hoursAgo(5)));
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(intake));
        car.flashes(flash(calibration).at(hoursAgo(4)));
        car.readsBack(calibration.reading().at(hoursAgo(3)));
        car.acknowledges();
        car.clears("FLASHED");
        car.gate().isClear();

        car.asksToLeave(Body.empty().at(hoursAgo(1))).isHeld().holdsFor("RETUNE_CLEARED");

        car.handsOver();
    }

    @Test
    void aHandoverThatWasClearThenAndNowIsRecordedLate() {
        Car car = shop().registers(aCar());
        Instant then = minutesAgo(30);

        Answer handoff = car.asksToLeave(Body.empty().at(then)).is(201);

        assertThat(handoff.field("basis")).isEqualTo("CLEAR");
        assertThat(car.handoffs()).hasSize(1);
        assertThat(Instant.parse(Answer.textOf(car.handoffs().get(0).path("effectiveAt"))))
                .isEqualTo(then);
        assertThat(Instant.parse(Answer.textOf(car.handoffs().get(0).path("recordedAt"))))
                .isAfter(then);
    }

    @Test
    void aCarThatWasSimplyTakenIsRecordedLateByAManagerAsAnException() {
        Car car = shop().registers(aCar());
        car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(hoursAgo(5)));
        Body taken = leavingWith(exception().with("reason", "the customer took it from the yard"))
                .at(hoursAgo(4));

        shop().as(Role.WRITER).post(car.path("handoffs"), taken).isProblem(403, "forbidden");
        Answer handoff =
                shop().as(Role.MANAGER).post(car.path("handoffs"), taken).is(201);

        assertThat(handoff.field("basis")).isEqualTo("EXCEPTION");
        assertThat(car.findOpenItem()).isPresent();
    }

    @Test
    void aSecondSaveOfARefusedHandoverIsRefusedAgain() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));

        car.asksToLeave().isHeld();
        car.asksToLeave().isHeld();

        assertThat(car.handoffs()).isEmpty();
    }

    @Test
    void theGateSaysTheSameTwice() {
        FinishedCar finished = shop().finishesACar();
        Instant moment = Instant.now().minusSeconds(1);
        assertThat(finished.car().gate(moment, moment).outcomes())
                .isEqualTo(finished.car().gate(moment, moment).outcomes());
    }

    @Test
    void twoPeopleAtOnceNeverOpenIt() throws InterruptedException, ExecutionException {
        for (int round = 0; round < 5; round++) {
            Car car = shop().finishesACar().car();
            Body another = fit(shop().aPartFor("DOWNPIPE"));
            ExecutorService people = Executors.newFixedThreadPool(4);
            try {
                Future<Answer> change = people.submit(() -> car.changes(another));
                List<Future<Answer>> handovers = IntStream.range(0, 3)
                        .mapToObj(person -> people.submit(() -> car.asksToLeave()))
                        .toList();
                Instant changed = Instant.parse(change.get().field("recordedAt"));
                for (Future<Answer> handover : handovers) {
                    leftBefore(changed, handover.get());
                }
            } finally {
                people.shutdown();
            }
            assertThat(car.handoffs()).hasSizeLessThan(2);
        }
    }

    /** Once a change is in the record, no handover that is CLEAR comes after it. */
    private static void leftBefore(Instant changed, Answer handover) {
        if (handover.status() == 201) {
            assertThat(Instant.parse(handover.field("recordedAt"))).isBefore(changed);
        } else {
            handover.isHeld();
        }
    }
}
