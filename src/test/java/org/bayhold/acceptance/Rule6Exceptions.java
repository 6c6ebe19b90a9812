package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fitUnidentified;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.secondlySignedWith;

import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.Gate;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code docs/rules.md}, rule 6: a manager's signed release of a car on HOLD. */
public abstract class Rule6Exceptions implements OnADatabase {
    private Car car;

    @BeforeEach
    void aCarOnHold() {
        car = shop().registers(aCar());
        car.fits(shop().aPartFor("DOWNPIPE"));
    }

    @Test
    void aManagerReleasesItAndTheRetuneItemStaysOpen() {
        String itemId = car.openItem().id();

        Answer handoff = car.asksToLeaveByException(exception()).is(201);

        assertThat(handoff.field("basis")).isEqualTo("EXCEPTION");
        new Gate(handoff.json().path("gate")).holdsFor("RETUNE_CLEARED");
        assertThat(car.openItem().id()).isEqualTo(itemId);
        assertThat(car.handoffs())
                .extracting(left -> Answer.textOf(left.path("basis")))
                .containsExactly("EXCEPTION");
    }

    @ParameterizedTest
    @EnumSource(names = "MANAGER", mode = EnumSource.Mode.EXCLUDE)
    void nobodyElseReleasesIt(Role role) {
        int before = car.history().size();

        shop().as(role).post(car.path("handoffs"), leavingWith(exception())).isProblem(403, "forbidden");

        assertThat(car.history()).hasSize(before);
        assertThat(car.handoffs()).isEmpty();
    }

    @Test
    void aTokenThatDoesNotSignReleasesNothing() {
        int before = car.history().size();

        shop().withNewToken(Role.MANAGER, false)
                .post(car.path("handoffs"), leavingWith(exception()))
                .isProblem(403, "forbidden");

        assertThat(car.history()).hasSize(before);
        assertThat(car.handoffs()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"reason", "travel", "acknowledgedBy"})
    void itNeedsAReasonTheWayOfTravelAndTheCustomersAcknowledgement(String field) {
        int before = car.history().size();

        car.asksToLeaveByException(exception().without(field)).isInvalid("exception." + field);
        car.asksToLeaveByException(exception().with(field, " ")).isProblem(400, "invalid");

        assertThat(car.history()).hasSize(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"DRIVEN", "TRAILER", "TOW"})
    void itSaysHowTheCarTravels(String travel) {
        assertThat(car.gate().risk()).isNotEqualTo("EXTREME");
        car.asksToLeaveByException(exception().with("travel", travel)).is(201);
    }

    @Test
    void itsCertificateSaysWhyAndWithWhichLimitations() {
        Answer handoff = car.asksToLeaveByException(exception()
                        .with("limitations", "no boost above one bar")
                        .with("returnBy", "2031-05-04T09:00:00Z"))
                .is(201);

        Answer certificate = shop().as(Role.MANAGER)
                .withHeader("Accept", "text/html")
                .get(handoff.field("certificateUrl"))
                .is(200);

        assertThat(certificate.text())
                .contains("goes to the paint shop next door")
                .contains("no boost above one bar")
                .contains("Ines Halvorsen")
                .contains("2031");
    }

    @Test
    void atExtremeRiskACarThatIsDrivenNeedsASecondSignature() {
        Car extreme = aCarAtExtremeRisk();
        Body driven = exception().with("travel", "DRIVEN");

        assertThat(extreme.asksToLeaveByException(driven).status()).isIn(400, 403, 409);
        assertThat(extreme.handoffs()).isEmpty();

        String calibrators = shop().newToken(Role.CALIBRATOR, true).field("token");
        extreme.asksToLeaveByException(secondlySignedWith(calibrators, driven)).is(201);
    }

    @Test
    void theManagerIsNoSecondPerson() {
        Car extreme = aCarAtExtremeRisk();
        String ownToken = shop().newToken(Role.MANAGER, true).field("token");

        Answer refused = extreme.asksToLeaveByException(
                secondlySignedWith(ownToken, exception().with("travel", "DRIVEN")));

        assertThat(refused.status()).isIn(400, 403, 409);
        assertThat(extreme.handoffs()).isEmpty();
    }

    @Test
    void aTechnicianIsNoSecondSigner() {
        Car extreme = aCarAtExtremeRisk();
        String technicians = shop().newToken(Role.TECH, false).field("token");

        Answer refused = extreme.asksToLeaveByException(
                secondlySignedWith(technicians, exception().with("travel", "DRIVEN")));

        assertThat(refused.status()).isIn(400, 403, 409);
        assertThat(extreme.handoffs()).isEmpty();
    }

    @Test
    void atExtremeRiskACarOnATrailerNeedsNone() {
        aCarAtExtremeRisk().asksToLeaveByException(exception()).is(201);
    }

    private Car aCarAtExtremeRisk() {
        Car extreme = shop().registers(aCar());
        extreme.changes(fitUnidentified("FUEL"));
        assertThat(extreme.gate().risk()).isEqualTo("EXTREME");
        return extreme;
    }
}
