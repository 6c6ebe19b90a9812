package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Audit;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 13: what left, what was known, and what is known now. */
public abstract class Rule13Audit implements OnADatabase {

    @Test
    void aCarThatLeftAsItShould() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();

        Audit.Row row = audit().of(handoff);

        row.says("CLEAR", "CLEAR", "CLEAR").finds().isNeverUnmatched();
        assertThat(row.text("handedOffAt")).isEqualTo(handoff.field("effectiveAt"));
        assertThat(row.text("recordedAt")).isEqualTo(handoff.field("recordedAt"));
        assertThat(row.text("basis")).isEqualTo("CLEAR");
        assertThat(row.text("handedOffBy")).isEqualTo(Role.WRITER.user());
        assertThat(row.text("voided")).isEqualTo("false");
        assertThat(Answer.textOf(row.json().path("vehicle").path("vin")))
                .isEqualTo(finished.car().vin());
    }

    @Test
    void anExceptionStandsForGood() {
        Car car = shop().registers(aCar());
        car.fits(shop().aPartFor("DOWNPIPE"));
        Answer handoff = car.asksToLeaveByException(exception()).is(201);

        Audit.Row row = audit().of(handoff);
        row.says("HOLD", "HOLD", "HOLD")
                .finds("EXCEPTION")
                .isUnmatchedSince(handoff.field("effectiveAt"))
                .isStillUnmatched();
        assertThat(row.list("failedThen")).contains("PARTS_COVERED", "RETUNE_CLEARED");
        assertThat(row.list("failedKnownThen")).isEqualTo(row.list("failedThen"));
        assertThat(row.text("handedOffBy")).isEqualTo(Role.MANAGER.user());

        car.strikesOut(handoff);

        Audit.Row struckOut = audit().of(handoff).finds("EXCEPTION").isNeverUnmatched();
        assertThat(struckOut.text("voided")).isEqualTo("true");
    }

    @Test
    void anInstallThatWasRecordedLate() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        finished.car().changes(fit(shop().aPartFor("DOWNPIPE")).at(hoursAgo(5)));

        audit().of(handoff)
                .says("CLEAR", "CLEAR", "HOLD")
                .finds("LATE_RECORD")
                .isUnmatchedSince(handoff.field("effectiveAt"))
                .isStillUnmatched();
    }

    @Test
    void aLateRecordThatTheCalibrationCoversIsNoFinding() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        finished.car().changes(fit(finished.intake()).at(hoursAgo(5)));

        audit().of(handoff).says("CLEAR", "CLEAR", "CLEAR").finds().isNeverUnmatched();
    }

    @Test
    void aRevisionThatWasWithdrawnWhileTheCarWasOut() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        Answer withdrawal = shop().withdraws(finished.calibration());

        Audit.Row row = audit().of(handoff);
        row.says("CLEAR", "CLEAR", "CLEAR").finds("WITHDRAWN_SINCE").isStillUnmatched();
        assertThat(Instant.parse(row.text("unmatchedSince")))
                .isAfter(Instant.parse(handoff.field("effectiveAt")))
                .isEqualTo(Instant.parse(withdrawal.field("withdrawnAt")));
    }

    @Test
    void aRevisionThatWasWithdrawnWhileTheCarWasInTheShop() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        shop().as(Role.WRITER)
                .post(finished.car().path("arrivals"), Body.empty())
                .is(201);
        shop().withdraws(finished.calibration());

        audit().of(handoff).finds().isNeverUnmatched();
    }

    @Test
    void aPartThatTheCustomerChangedOnTheRoad() {
        Answer handoff = leftTwoDaysAgo();
        Car car = carOf(handoff);
        Answer change =
                car.changes(fit(shop().aPartFor("TURBOCHARGER")).reported().at(hoursAgo(36)));

        audit().of(handoff)
                .says("HOLD", "HOLD", "CLEAR")
                .finds("EXCEPTION", "CHANGED_AFTER_HANDOFF")
                .isUnmatchedSince(change.field("effectiveAt"))
                .lasted(Duration.ofHours(36))
                .isStillUnmatched();
    }

    @Test
    void aFileThatSomebodyElseFlashedOnTheRoad() {
        Answer handoff = leftTwoDaysAgo();
        carOf(handoff).flashes(dealersUpdate().at(hoursAgo(12)));

        audit().of(handoff).finds("EXCEPTION", "CHANGED_AFTER_HANDOFF").lasted(Duration.ofHours(12));
    }

    @Test
    void workInTheShopIsNoChangeOnTheRoad() {
        Answer handoff = leftTwoDaysAgo();
        carOf(handoff).changes(fit(shop().aPartFor("TURBOCHARGER")).at(hoursAgo(12)));

        Audit.Row row = audit().of(handoff).finds("EXCEPTION").isNeverUnmatched();
        assertThat(Instant.parse(row.text("returnedAt"))).isBetween(hoursAgo(13), hoursAgo(11));
    }

    @Test
    void theDaysEndWithTheReturn() {
        Answer handoff = leftTwoDaysAgo();
        Car car = carOf(handoff);
        car.changes(fit(shop().aPartFor("DOWNPIPE")).reported().at(hoursAgo(36)));
        shop().as(Role.WRITER)
                .post(car.path("arrivals"), Body.empty().at(hoursAgo(24)))
                .is(201);

        Audit.Row row = audit().of(handoff).finds("EXCEPTION", "CHANGED_AFTER_HANDOFF");
        row.lasted(Duration.ofHours(12)).isUnmatchedNoMore();
        assertThat(row.text("matchedAgainAt")).isEmpty();
    }

    @Test
    void aCarThatMatchesAgain() {
        Answer handoff = leftTwoDaysAgo();
        Car car = carOf(handoff);
        Part downpipe = shop().aPartFor("DOWNPIPE");
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(downpipe));
        car.changes(fit(downpipe).reported().at(hoursAgo(36)));
        shop().as(Role.WRITER)
                .post(car.path("arrivals"), Body.empty().at(hoursAgo(30)))
                .is(201);
        Answer flash = car.flashes(calibration);

        Audit.Row row = audit().of(handoff);
        row.lasted(Duration.ofHours(6)).isUnmatchedNoMore();
        assertThat(row.text("matchedAgainAt")).isEqualTo(flash.field("effectiveAt"));
    }

    @Test
    void anEcuCheckThatDiffers() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        Answer check = finished.car().readsBack(aStrangeReading().reported());

        audit().of(handoff)
                .says("CLEAR", "CLEAR", "CLEAR")
                .finds("READ_BACK_DIFFERS")
                .isUnmatchedSince(check.field("effectiveAt"))
                .isStillUnmatched();
    }

    @Test
    void anEcuCheckAtTheReturnTellsWhatRanOnTheRoad() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        finished.car().readsBack(aStrangeReading());

        Audit.Row row = audit().of(handoff).finds("READ_BACK_DIFFERS").isNeverUnmatched();
        assertThat(row.text("returnedAt")).isNotEmpty();
    }

    @Test
    void anItemThatClosedBecauseItsCausesWereStruckOut() {
        Car car = shop().registers(aCar());
        car.strikesOut(car.fits(shop().aPartFor("DOWNPIPE")));
        Answer first = car.handsOver();
        Answer second = car.handsOver();

        audit().of(first).says("CLEAR", "CLEAR", "CLEAR").finds("VOIDED_CAUSE").isNeverUnmatched();
        audit().of(second).finds();
    }

    @Test
    void paperAloneMakesNoCarUnmatched() {
        Car car = shop().registers(aCar());
        Part part = shop().aPartFor("AIR_INTAKE");
        car.fits(part);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(part));
        car.flashes(calibration);
        Answer handoff = car.asksToLeaveByException(exception()).is(201);

        Audit.Row row = audit().of(handoff)
                .says("HOLD", "HOLD", "HOLD")
                .finds("EXCEPTION")
                .isNeverUnmatched();
        assertThat(row.list("failedThen")).contains("READ_BACK_MATCHES", "RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED");
    }

    @Test
    void aHandoverThatWasRecordedLateIsReplayedAsItWasDecided() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        shop().as(Role.WRITER)
                .post(finished.car().path("arrivals"), Body.empty())
                .is(201);
        finished.car().acknowledges();
        Instant ready = Instant.now();
        Answer late = finished.car().asksToLeave(Body.empty().at(ready)).is(201);

        List<Audit.Row> rows = audit().of(finished.car());

        assertThat(rows.stream().map(row -> row.text("handoffId"))).containsExactly(handoff.id(), late.id());
        rows.forEach(row -> row.says("CLEAR", "CLEAR", "CLEAR").finds());
    }

    @Test
    void thePastAsItWasKnown() {
        FinishedCar finished = shop().finishesACar();
        Answer handoff = finished.car().handsOver();
        Instant before = Instant.parse(handoff.field("recordedAt"));
        finished.car().changes(fit(shop().aPartFor("DOWNPIPE")).at(hoursAgo(5)));

        List<Audit.Row> then = audit().rows("?knownAt=" + before).stream()
                .filter(row -> row.isOf(finished.car()))
                .toList();
        assertThat(then).hasSize(1);
        then.get(0).says("CLEAR", "CLEAR", "CLEAR").finds().isNeverUnmatched();
        assertThat(audit().rows("?knownAt=" + before.minusMillis(1)).stream().filter(row -> row.isOf(finished.car())))
                .isEmpty();
    }

    /** A factory car that left two days ago and was written down today, as an exception because nobody was asked. */
    private Answer leftTwoDaysAgo() {
        Car car = shop().registers(aCar());
        Answer open = car.changes(refitFactory("SPARK_PLUGS").at(hoursAgo(1)));
        Answer handoff = shop().as(Role.MANAGER)
                .post(car.path("handoffs"), leavingWith(exception()).at(hoursAgo(48)))
                .is(201);
        car.strikesOut(open);
        return handoff;
    }

    private Car carOf(Answer handoff) {
        return shop().find(handoff.field("vehicleId"));
    }

    private Audit audit() {
        return new Audit(shop());
    }
}
