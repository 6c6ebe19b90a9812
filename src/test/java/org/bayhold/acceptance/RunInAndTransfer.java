package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import org.bayhold.support.Answer;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, words and rule 2: a revision to run an engine in may leave, one to reach the dynamometer never. */
public abstract class RunInAndTransfer implements OnADatabase {
    private Car car;
    private Part assembly;

    @BeforeEach
    void aCarWithANewRotatingAssembly() {
        car = shop().registers(aCar());
        assembly = shop().aPartFor("ROTATING_ASSEMBLY");
        car.fits(assembly);
    }

    @Test
    void aRunInRevisionMayLeaveWithItsLimitsOnTheCertificate() {
        Calibration runIn = shop().issues(RevisionDraft.forThe(car)
                .covers(assembly)
                .with("purpose", "RUN_IN")
                .with("limits", "below 3500 rpm for the first thousand kilometres"));
        car.isFinishedWith(runIn);

        Answer handoff = car.handsOver();

        assertThat(handoff.field("basis")).isEqualTo("CLEAR");
        Answer certificate = shop().as(Role.WRITER)
                .withHeader("Accept", "text/html")
                .get(handoff.field("certificateUrl"))
                .is(200);
        assertThat(certificate.text()).contains("below 3500 rpm for the first thousand kilometres");
    }

    @Test
    void aTransferRevisionNeverLeaves() {
        Calibration transfer =
                shop().issues(RevisionDraft.forThe(car).covers(assembly).with("purpose", "TRANSFER"));
        car.flashes(transfer);
        car.readsBack(transfer);
        car.acknowledges();

        assertThat(car.openItem().causes()).contains("TRANSFER_FLASHED");
        assertThat(car.gate().outcome("PARTS_COVERED")).isEqualTo("PASS");
        car.gate().holdsFor("CALIBRATION_IN_FORCE", "RETUNE_CLEARED");
        car.asksToClear("FLASHED").lacksEvidenceFor("CALIBRATION_IN_FORCE");
        car.asksToLeave().isHeld();
    }

    @Test
    void afterTheDynamometerTheRealRevisionIsFlashed() {
        car.flashes(shop().issues(RevisionDraft.forThe(car).covers(assembly).with("purpose", "TRANSFER")));

        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(assembly)));

        car.handsOver();
    }
}
