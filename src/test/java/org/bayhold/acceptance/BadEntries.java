package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCustomer;
import static org.bayhold.support.Facts.aPart;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bayhold.support.Body;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Vins;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cars, parts, calibrations and policies that cannot be entered. */
public abstract class BadEntries implements OnADatabase {

    static Stream<Arguments> badCars() {
        return Stream.of(
                bad("vin", "a check digit that does not hold", aCar().with("vin", Vins.withWrongCheckDigit())),
                bad("vin", "the letter I in a VIN", aCar().with("vin", "1G4AH59H45GI18341")),
                bad("vin", "the letter O in a VIN", aCar().with("vin", "1M8GDM9AXKPO42788")),
                bad("vin", "a VIN of sixteen", aCar().with("vin", "1G4AH59H45G11834")),
                bad("vin", "a VIN of eighteen", aCar().with("vin", "1G4AH59H45G1183411")),
                bad("vin", "neither VIN nor frame number", aCar().without("vin")),
                bad("ecuHardware", "no ECU hardware", aCar().without("ecuHardware")),
                bad("baseline", "no baseline", aCar().without("baseline")),
                bad("baseline", "a baseline that is none", aCar().with("baseline", "SHINY")),
                bad("customer", "no customer", aCar().without("customer")),
                bad(
                        "customer.name",
                        "a nameless customer",
                        aCar().with("customer", aCustomer().without("name"))),
                bad("cylinders", "no cylinder", aCar().with("cylinders", 0)),
                bad("displacementCc", "a negative displacement", aCar().with("displacementCc", -1984)),
                bad("odometerKm", "a negative odometer", aCar().with("odometerKm", -5)),
                bad("factoryCvn", "a factory CALID without a CVN", aCar().without("factoryCvn")),
                bad("description", "over-long text", aCar().with("description", "d".repeat(20_000))),
                bad("wheels", "a field that nobody knows", aCar().with("wheels", 3)));
    }

    private static Arguments bad(String field, String words, Body body) {
        return arguments(Named.of(words, body), field);
    }

    @ParameterizedTest
    @MethodSource("badCars")
    void aBadCarIsNotRegistered(Body car, String field) {
        String plate = car.text("plate");

        shop().as(Role.WRITER).post("/vehicles", car).isInvalid(field);

        assertThat(shop().as(Role.WRITER).list("/vehicles?q=" + plate)).isEmpty();
    }

    @Test
    void aVinIsRegisteredOnce() {
        Body car = aCar();
        shop().registers(car);

        shop().as(Role.WRITER)
                .post("/vehicles", aCar().with("vin", car.text("vin")))
                .isProblem(409, "conflict");
        shop().as(Role.WRITER)
                .post("/vehicles", aCar().with("vin", car.text("vin").toLowerCase(Locale.ROOT)))
                .is(409);

        assertThat(shop().as(Role.WRITER).list("/vehicles?vin=" + car.text("vin")))
                .hasSize(1);
    }

    @Test
    void aPartIsCataloguedOnce() {
        Body part = aPart("AIR_INTAKE");
        shop().catalogues(part);

        shop().as(Role.WRITER).post("/part-specs", part).isProblem(409, "conflict");
        shop().as(Role.WRITER)
                .post("/part-specs", part.with("specRevision", "B"))
                .is(201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"category", "maker", "partNumber", "specRevision"})
    void aPartSpecNeedsItsName(String field) {
        Body part = aPart("AIR_INTAKE");

        shop().as(Role.WRITER).post("/part-specs", part.without(field)).isInvalid(field);

        assertThat(shop().as(Role.WRITER).list("/part-specs?q=" + part.text("partNumber")))
                .isEmpty();
    }

    @Test
    void aPartOfAnUnknownCategoryIsRefused() {
        shop().as(Role.WRITER).post("/part-specs", aPart("FLUX_CAPACITOR")).isInvalid("category");
    }

    @Test
    void aRevisionIsIssuedOnce() {
        RevisionDraft draft = RevisionDraft.forEcu("HW-ONCE");
        shop().issues(draft);

        shop().as(Role.CALIBRATOR).post("/calibrations", draft.toSend()).isProblem(409, "conflict");
        shop().as(Role.CALIBRATOR)
                .post("/calibrations", draft.with("revision", "2").toSend())
                .is(201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"name", "revision", "ecuHardware", "cvn"})
    void aRevisionNeedsItsName(String field) {
        Body body = RevisionDraft.forEcu("HW-NAMELESS").toSend();
        shop().as(Role.CALIBRATOR).post("/calibrations", body.without(field)).isInvalid(field);
    }

    @Test
    void aRevisionThatNothingIdentifiesIsRefused() {
        Body body = RevisionDraft.forEcu("HW-NAMELESS").knownByItsHashAlone().toSend();
        shop().as(Role.CALIBRATOR)
                .post("/calibrations", body.without("fileSha256"))
                .isProblem(400, "invalid");
    }

    @Test
    void aRevisionForAPurposeThatIsNoneIsRefused() {
        Body body = RevisionDraft.forEcu("HW-NAMELESS").with("purpose", "RACE").toSend();
        shop().as(Role.CALIBRATOR).post("/calibrations", body).isInvalid("purpose");
    }

    @Test
    void aRevisionCannotNameAPartForAnotherPlace() {
        Part intake = shop().aPartFor("AIR_INTAKE");
        Body line = Body.of("category", "TURBOCHARGER").with("partSpecIds", List.of(intake.id()));
        shop().as(Role.CALIBRATOR)
                .post(
                        "/calibrations",
                        RevisionDraft.forEcu("HW-MIXED").coversLine(line).toSend())
                .isProblem(400, "invalid");
    }

    @Test
    void aPolicyThatMakesNoSenseIsRefused() {
        String before = shop().policy().toString();

        shop().as(Role.MANAGER)
                .put("/policy", Body.of("readBackMaxAgeHours", 0))
                .isInvalid("readBackMaxAgeHours");
        shop().as(Role.MANAGER)
                .put("/policy", Body.of("readBackRequired", "perhaps"))
                .isInvalid("readBackRequired");
        shop().as(Role.MANAGER)
                .put("/policy", Body.of("everythingAllowed", true))
                .isInvalid("everythingAllowed");

        assertThat(shop().policy()).hasToString(before);
    }

    @Test
    void aPolicyFieldLeftOutKeepsItsValue() {
        String before = shop().policy().path("readBackRequired").toString();
        shop().whilePolicySays("readBackMaxAgeHours", 36, () -> {
            assertThat(shop().policy().path("readBackMaxAgeHours").asInt()).isEqualTo(36);
            assertThat(shop().policy().path("readBackRequired")).hasToString(before);
        });
        assertThat(shop().policy().path("readBackMaxAgeHours").asInt()).isEqualTo(24);
    }
}
