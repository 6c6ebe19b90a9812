package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.hoursAgo;

import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.Eventually;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, rule 11: withdrawing a revision holds every car that runs it. */
public abstract class Rule11Withdrawal implements OnADatabase {

    @Test
    void everyCarThatRunsItIsHeldAndNamed() {
        String ecuHardware = aCar().text("ecuHardware");
        Part intake = shop().aPartFor("AIR_INTAKE");
        Calibration calibration =
                shop().issues(RevisionDraft.forEcu(ecuHardware).covers(intake));
        Calibration newer = shop().issues(RevisionDraft.forEcu(ecuHardware).covers(intake));
        Car inTheShop = finished(ecuHardware, intake, calibration);
        Car out = finished(ecuHardware, intake, calibration);
        out.handsOver();
        Car movedOn = finished(ecuHardware, intake, calibration);
        movedOn.flashes(newer);
        movedOn.readsBack(newer);
        Car other = shop().finishesACar().car();

        Answer withdrawal = shop().withdraws(calibration);

        assertThat(affected(withdrawal)).contains(inTheShop.id(), out.id()).doesNotContain(movedOn.id(), other.id());
        inTheShop.gate().holdsFor("CALIBRATION_IN_FORCE");
        out.gate().holdsFor("CALIBRATION_IN_FORCE");
        for (Car held : List.of(inTheShop, out)) {
            Eventually.holds(() -> assertThat(held.openItem().causes()).containsExactly("REVISION_WITHDRAWN"));
        }
        movedOn.gate().isClear();
        other.gate().isClear();
    }

    @Test
    void aCarIsNotHandedOverOnAWithdrawnRevision() {
        FinishedCar finished = shop().finishesACar();

        shop().withdraws(finished.calibration());

        finished.car().asksToLeave().isHeld().holdsFor("CALIBRATION_IN_FORCE");
        finished.car().asksToLeave(Body.empty().at(hoursAgo(0))).isHeld();
    }

    @Test
    void anotherFlashOfARevisionInForceReleasesIt() {
        FinishedCar finished = shop().finishesACar();
        shop().withdraws(finished.calibration());
        Eventually.holds(() -> assertThat(finished.car().findOpenItem()).isPresent());
        Calibration next = shop().issues(RevisionDraft.forThe(finished.car()).covers(finished.intake()));

        finished.car().flashes(next);
        finished.car().readsBack(next);
        finished.car().clears("FLASHED");

        finished.car().gate().isClear();
    }

    @Test
    void aWithdrawalNeedsAReason() {
        FinishedCar finished = shop().finishesACar();

        shop().as(Role.CALIBRATOR)
                .post("/calibrations/" + finished.calibration().id() + "/withdrawal", Body.empty())
                .isInvalid("reason");

        finished.car().gate().isClear();
    }

    @Test
    void aRevisionIsWithdrawnOnce() {
        FinishedCar finished = shop().finishesACar();
        shop().withdraws(finished.calibration());

        shop().as(Role.CALIBRATOR)
                .post("/calibrations/" + finished.calibration().id() + "/withdrawal", Body.of("reason", "again"))
                .isProblem(409, "conflict");
    }

    private Car finished(String ecuHardware, Part intake, Calibration calibration) {
        Car car = shop().registers(aCar().with("ecuHardware", ecuHardware));
        car.fits(intake);
        return car.isFinishedWith(calibration);
    }

    private static List<String> affected(Answer withdrawal) {
        return Answer.elements(withdrawal.json().path("affectedVehicles")).stream()
                .map(vehicle -> Answer.textOf(vehicle.path("id")))
                .toList();
    }
}
