package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;
import static org.bayhold.support.Facts.flows;

import java.time.Instant;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The gate says what the mismatches of a car do. {@code docs/prediction.md}; the numbers of its tests, over HTTP. */
public abstract class PredictedMismatches implements OnADatabase {
    /** 66 to 73 mm at equal air speed: lambda 1.223370 (flow by area). */
    @Test
    void anIntakeOfAnotherBoreIsLeanAndExtreme() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(intake(73));

        JsonNode predicted = prediction(car);

        assertThat(predicted.path("airMeterRatio").doubleValue()).isCloseTo(0.817414, within(5e-7));
        assertThat(predicted.path("lambdaAtTarget").doubleValue()).isCloseTo(1.223370, within(5e-7));
        assertThat(predicted.path("airMeterBandPercent").doubleValue()).isEqualTo(10);
        assertThat(predicted.path("notComputable")).isEmpty();
        assertThat(predicted.path("sentences").toString()).contains("Do not start the engine", "1.223", "too lean");
        assertThat(car.gate().risk()).isEqualTo("EXTREME");
        assertThat(car.gate().decision()).isEqualTo("HOLD");
        assertThat(Answer.textOf(car.openItem().json().path("risk"))).isEqualTo("EXTREME");
        assertThat(shop().visitor(Role.TECH).opens("/cars/" + car.id()).is(200).text())
                .contains("Alone, it makes lambda 1.223 where 1.000 is asked for.");
    }

    @Test
    void twoErrorsThatHideEachOtherAreStillExtreme() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(intake(73));
        car.fits(shop().injectors(440 * 1.22337));

        JsonNode predicted = prediction(car);

        assertThat(predicted.path("lambdaAtTarget").doubleValue()).isCloseTo(1, within(1e-5));
        assertThat(predicted.path("sentences").toString()).contains("hide each other");
        assertThat(car.gate().risk()).isEqualTo("EXTREME");
    }

    /** However small the risk: the gate holds. */
    @Test
    void aSmallErrorIsModerateAndHoldsAsFirmly() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(shop().injectors(450));

        assertThat(prediction(car).path("lambdaAtTarget").doubleValue()).isCloseTo(440 / 450.0, within(1e-9));
        assertThat(car.gate().risk()).isEqualTo("MODERATE");
        car.gate().holdsFor("PARTS_COVERED", "RETUNE_CLEARED");
        car.asksToLeave().isProblem(409, "gate-hold");
    }

    @Test
    void whatIsNotRecordedIsNotTakenAsEqual() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(shop().aPartFor("INJECTORS"));

        JsonNode predicted = prediction(car);

        assertThat(predicted.path("lambdaAtTarget").isNull()).isTrue();
        assertThat(predicted.path("notComputable").toString())
                .contains("INJECTORS", "flowCcPerMin of the part on the car is not recorded");
        assertThat(car.gate().risk()).isEqualTo("HIGH");
    }

    @Test
    void whereNothingDiffersNothingIsPredicted() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));

        assertThat(prediction(car).isNull()).isTrue();
    }

    /** A correction is dated: what was known before it stays what it was. */
    @Test
    void whatWasKnownThenIsPredictedAsThen() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        Part fitted = shop().injectors(650);
        Answer fits = car.fits(fitted);
        Instant then = Instant.parse(fits.field("recordedAt"));
        shop().as(Role.CALIBRATOR)
                .post(
                        "/part-specs/" + fitted.id() + "/corrections",
                        Body.of("attributes", flows(550)).with("reason", "measured on the bench"))
                .is(201);

        assertThat(prediction(car).path("fuelDeliveryRatio").doubleValue()).isCloseTo(1.25, within(1e-12));
        assertThat(car.gate(then, then)
                        .json()
                        .path("prediction")
                        .path("fuelDeliveryRatio")
                        .doubleValue())
                .isCloseTo(1.477273, within(5e-7));
    }

    @Test
    void aRevisionsOwnAuthorityCounts() {
        Car car = shop().registers(aCar());
        Part calibrated = shop().injectors(440);
        car.fits(calibrated);
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car)
                .covers(calibrated)
                .with("assumes", Body.of("trimAuthorityPercent", 10))));
        car.fits(shop().injectors(500));

        assertThat(prediction(car).path("trimAuthorityPercent").doubleValue()).isEqualTo(10);
        assertThat(prediction(car).path("authorityUsedPercent").doubleValue()).isCloseTo(120, within(1e-9));
        assertThat(car.gate().risk()).isEqualTo("EXTREME");
    }

    private static JsonNode prediction(Car car) {
        return car.gate().json().path("prediction");
    }

    private Part intake(double boreMm) {
        return shop().catalogues(aPart("AIR_INTAKE")
                .with(
                        "attributes",
                        Body.of("sensorBoreMm", boreMm)
                                .with("filterKind", "PAPER")
                                .with("sensorPlacement", "STRAIGHT")
                                .with("ductShape", "STRAIGHT")));
    }
}
