package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** Signing in over the API. */
public abstract class Tokens implements OnADatabase {

    @Test
    void aTokenIsShownOnceAndListedWithoutItsSecret() {
        Answer made = shop().newToken(Role.TECH, false);

        assertThat(made.field("token")).hasSizeGreaterThan(40);
        assertThat(Instant.parse(made.field("expiresAt"))).isAfter(Instant.now());
        Answer listed =
                shop().anonymous().withToken(made.field("token")).get("/tokens").is(200);
        assertThat(listed.text()).contains(made.id(), "bench laptop").doesNotContain(made.field("token"));
    }

    @Test
    void aRevokedTokenOpensNothing() {
        Answer made = shop().newToken(Role.MANAGER, true);
        Api holder = shop().anonymous().withToken(made.field("token"));
        holder.get("/policy").is(200);

        assertThat(holder.delete("/tokens/" + made.id()).status()).isIn(200, 204);

        holder.get("/policy").isProblem(401, "unauthenticated");
        holder.put("/policy", Body.of("readBackRequired", false)).isProblem(401, "unauthenticated");
        assertThat(shop().policy().path("readBackRequired").asBoolean()).isTrue();
    }

    @Test
    void aWrongPasswordMakesNoToken() {
        shop().anonymous()
                .withBasic("auditor", "not the password at all")
                .post("/tokens", Body.of("label", "guess"))
                .isProblem(401, "unauthenticated");
        // a second try may be told to wait
        assertThat(shop().anonymous()
                        .withBasic("nobody", "not the password at all")
                        .post("/tokens", Body.of("label", "guess"))
                        .status())
                .isIn(401, 429);
        assertThat(shop().anonymous().post("/tokens", Body.of("label", "guess")).status())
                .isIn(401, 429);
    }

    @Test
    void aPasswordOpensNothingButTokens() {
        assertThat(shop().withPassword(Role.MANAGER).get("/policy").status()).isEqualTo(401);
    }

    @Test
    void somebodyElsesTokenIsNotOnesOwnToRevoke() {
        Answer made = shop().newToken(Role.TECH, false);

        assertThat(shop().as(Role.WRITER).delete("/tokens/" + made.id()).status())
                .isIn(403, 404);

        shop().anonymous().withToken(made.field("token")).get("/policy").is(200);
    }

    @Test
    void aTokenMadeWithoutSignsSignsNothing() {
        FinishedCar finished = shop().finishesACar();
        finished.car().fits(finished.intake());
        finished.car().flashes(finished.calibration());
        finished.car().readsBack(finished.calibration());
        String item = finished.car().openItem().id();
        int before = finished.car().history().size();

        shop().withNewToken(Role.CALIBRATOR, false)
                .post("/retune-items/" + item + "/clearance", Body.of("basis", "FLASHED"))
                .isProblem(403, "forbidden");
        shop().withNewToken(Role.MANAGER, false)
                .post("/records/" + finished.flash().id() + "/voiding", Body.of("reason", "a slip"))
                .isProblem(403, "forbidden");

        assertThat(finished.car().history()).hasSize(before);
    }

    @Test
    void aTokenMadeWithoutSignsStillRecords() {
        FinishedCar finished = shop().finishesACar();
        shop().withNewToken(Role.CALIBRATOR, false)
                .post(finished.car().path("read-backs"), finished.calibration().reading())
                .is(201);
    }
}
