package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.remove;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** One key, one record. */
public abstract class Idempotency implements OnADatabase {
    private static final int PEOPLE = 16;

    @Test
    void theSameKeyWithTheSameBodyReplaysTheFirstAnswer() {
        Car car = shop().registers(aCar());
        Body change = fit(shop().aPartFor("AIR_INTAKE"));
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());

        Answer first = counter.post(car.path("part-changes"), change).is(201);
        int recorded = car.history().size();
        Answer again = counter.post(car.path("part-changes"), change);

        equal(again, first);
        assertThat(car.history()).hasSize(recorded);
    }

    @Test
    void aQuotedKeyIsTheSameKey() {
        Car car = shop().registers(aCar());
        String key = Api.newKey();
        Body change = remove("AIR_FILTER");

        Answer bare = shop().as(Role.WRITER).withKey(key).post(car.path("part-changes"), change);
        Answer quoted = shop().as(Role.WRITER).withKey('"' + key + '"').post(car.path("part-changes"), change);

        equal(quoted, bare.is(201));
    }

    @Test
    void theSameKeyWithAnotherBodyIsAMismatch() {
        Car car = shop().registers(aCar());
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());
        counter.post(car.path("part-changes"), remove("AIR_FILTER")).is(201);
        int recorded = car.history().size();

        counter.post(car.path("part-changes"), remove("AIR_INTAKE")).isProblem(422, "idempotency-mismatch");

        assertThat(car.history()).hasSize(recorded);
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
    }

    @Test
    void theSameKeyForAnotherCarIsAMismatch() {
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());
        Car one = shop().registers(aCar());
        Car other = shop().registers(aCar());
        counter.post(one.path("part-changes"), remove("AIR_FILTER")).is(201);

        counter.post(other.path("part-changes"), remove("AIR_FILTER")).isProblem(422, "idempotency-mismatch");

        assertThat(other.findOpenItem()).isEmpty();
    }

    @Test
    void eachPersonHasKeysOfTheirOwn() {
        Car car = shop().registers(aCar());
        String key = Api.newKey();

        Answer writers = shop().as(Role.WRITER).withKey(key).post(car.path("part-changes"), remove("AIR_FILTER"));
        Answer technicians = shop().as(Role.TECH).withKey(key).post(car.path("part-changes"), remove("AIR_INTAKE"));

        assertThat(technicians.is(201).id()).isNotEqualTo(writers.is(201).id());
    }

    @Test
    void aCarIsRegisteredOnce() {
        Body car = aCar();
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());

        Answer first = counter.post("/vehicles", car).is(201);

        equal(counter.post("/vehicles", car), first);
        assertThat(shop().as(Role.WRITER).list("/vehicles?vin=" + car.text("vin")))
                .hasSize(1);
    }

    @Test
    void manyCopiesAtOnceMakeOneRecordAndGiveEqualAnswers() throws Exception {
        Car car = shop().registers(aCar());
        Body change = fit(shop().aPartFor("AIR_INTAKE"));
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());
        int before = car.history().size();
        int ofOneChange = car.recordsAddedBy(() -> car.changes(change)).size();

        List<Answer> answers = atOnce(() -> counter.post(car.path("part-changes"), change));

        answers.forEach(answer -> equal(answer, answers.get(0).is(201)));
        // the second change joins the item that the first one opened
        assertThat(car.history().size() - before - ofOneChange).isBetween(1, ofOneChange);
        assertThat(car.openItem().causes()).hasSize(2);
    }

    @Test
    void manyCopiesOfOneHandoverHandOverOnce() throws Exception {
        Car car = shop().finishesACar().car();
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());

        List<Answer> answers = atOnce(() -> counter.post(car.path("handoffs"), Body.empty()));

        answers.forEach(answer -> equal(answer, answers.get(0).is(201)));
        assertThat(car.handoffs()).hasSize(1);
    }

    @Test
    void aRefusedHandoverIsReplayedAlthoughTheCarIsClearByNow() {
        Car car = shop().registers(aCar());
        Part intake = shop().aPartFor("AIR_INTAKE");
        car.fits(intake);
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());
        Answer refused = counter.post(car.path("handoffs"), Body.empty());
        refused.isHeld();
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(intake)));
        int recorded = car.history().size();

        Answer again = counter.post(car.path("handoffs"), Body.empty());

        assertThat(again.status()).isEqualTo(409);
        assertThat(again.json().path("gate")).isEqualTo(refused.json().path("gate"));
        assertThat(car.history()).hasSize(recorded);
        car.handsOver();
    }

    @Test
    void aSignOffWithoutEvidenceIsReplayedAlthoughTheEvidenceIsThereByNow() {
        FinishedCar finished = shop().finishesACar();
        Car car = finished.car();
        Calibration calibration = finished.calibration();
        car.fits(finished.intake());
        String signOff = "/retune-items/" + car.openItem().id() + "/clearance";
        Body basis = Body.of("basis", "FLASHED");
        Api desk = shop().as(Role.CALIBRATOR).withKey(Api.newKey());
        desk.post(signOff, basis).lacksEvidenceFor("FLASH_AFTER_LAST_CHANGE");
        car.flashes(calibration);
        car.readsBack(calibration);

        desk.post(signOff, basis).lacksEvidenceFor("FLASH_AFTER_LAST_CHANGE");

        assertThat(car.findOpenItem()).isPresent();
        shop().as(Role.CALIBRATOR).post(signOff, basis).is(200);
    }

    @Test
    void anyOtherRefusalMayBeSentAgain() {
        Car car = shop().registers(aCar());
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());

        counter.post(car.path("part-changes"), remove("FLUX_CAPACITOR")).isInvalid("category");
        counter.post(car.path("part-changes"), remove("AIR_FILTER")).is(201);
    }

    @Test
    void aConflictMayBeSentAgain() {
        Body car = aCar();
        shop().registers(car);
        Api counter = shop().as(Role.WRITER).withKey(Api.newKey());

        counter.post("/vehicles", car).isProblem(409, "conflict");
        counter.post("/vehicles", aCar()).is(201);
    }

    private static void equal(Answer answer, Answer expected) {
        assertThat(answer.status()).as(answer.toString()).isEqualTo(expected.status());
        assertThat(answer.json()).isEqualTo(expected.json());
        assertThat(answer.header("Location")).isEqualTo(expected.header("Location"));
    }

    private static List<Answer> atOnce(Callable<Answer> call) throws Exception {
        ExecutorService people = Executors.newFixedThreadPool(PEOPLE);
        try {
            CyclicBarrier together = new CyclicBarrier(PEOPLE);
            List<Future<Answer>> calls = new ArrayList<>();
            for (int i = 0; i < PEOPLE; i++) {
                calls.add(people.submit(() -> {
                    together.await(30, TimeUnit.SECONDS);
                    return call.call();
                }));
            }
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> answer : calls) {
                answers.add(answer.get());
            }
            return answers;
        } finally {
            people.shutdown();
        }
    }
}
