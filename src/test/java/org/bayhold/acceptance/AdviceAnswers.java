package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.about;
import static org.bayhold.support.Facts.proposes;

import java.util.List;
import java.util.UUID;
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
import tools.jackson.databind.JsonNode;

/** May I run this part with my calibration? docs/rules.md, "Advice". */
public abstract class AdviceAnswers implements OnADatabase {
    @Test
    void aPartThatTheCalibrationWasNotWrittenForIsRetunedFirst() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer asked = shop().asks(about(car).plus("proposed", proposes(shop().injectors(650))));

        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("Injectors: the calibration was not written");
        JsonNode prediction = asked.json().path("prediction");
        // q_inst / q_cal at equal pressure: 650 / 440
        assertThat(prediction.path("fuelDeliveryRatio").doubleValue()).isCloseTo(1.477273, within(5e-7));
        assertThat(prediction.path("risk").asString()).isEqualTo("EXTREME");
        assertThat(asked.json().path("cautions").path(0).asString())
                .startsWith("WARNING:")
                .contains("do not start");
        assertThat(asked.json().path("secondThoughts").toString()).contains("another engine");
        assertThat(asked.field("letter")).contains("No, not with this calibration", "Injectors", "Injectors");
    }

    @Test
    void whatIfWritesNoFactOfTheCar() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        List<String> added =
                car.recordsAddedBy(() -> shop().asks(about(car).plus("proposed", proposes(shop().injectors(650)))));

        assertThat(added).isEmpty();
        assertThat(car.gate().decision()).isEqualTo("CLEAR");
    }

    @Test
    void aLikePartThatTheCalibrationNamesIsCoveredAndStillToBeSignedOff() {
        Car car = shop().registers(aCar());
        Part one = shop().injectors(440);
        Part equal = shop().injectors(440);
        car.fits(one);
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(one, equal)));

        Answer asked = shop().asks(about(car).plus("proposed", proposes(equal)));

        assertThat(asked.field("answer")).isEqualTo("COVERED");
        assertThat(asked.json().path("reasons").toString()).contains("still opens a retune");
        assertThat(asked.json().path("prediction").isNull()).isTrue();
        // and so it is
        car.fits(equal);
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
    }

    @Test
    void nobodyAnswersForWhatNobodyKnows() {
        Car stranger = shop().registers(aCarOfUnknownHistory());
        assertThat(shop().asks(about(stranger).plus("proposed", proposes(shop().injectors(440))))
                        .field("answer"))
                .isEqualTo("UNKNOWN_PARTS");

        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer unlisted = shop().asks(about(car)
                .plus("proposed", Body.of("category", "TURBOCHARGER").with("action", "FIT")));
        assertThat(unlisted.field("answer")).isEqualTo("UNKNOWN_PARTS");
        assertThat(unlisted.json().path("reasons").toString()).contains("the catalogue does not know this part");
    }

    @Test
    void anotherSettingIsAnotherCar() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer asked = shop().asks(about(car)
                .plus("proposed", Body.of("category", "WASTEGATE").with("action", "ADJUST")));
        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("Another setting is another car", "Wastegate");
    }

    @Test
    void severalPartsAreAnsweredTogether() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Part injectors = shop().injectors(650);
        Part intake = shop().aPartFor("AIR_INTAKE");
        Calibration both =
                shop().issues(RevisionDraft.forThe(car).covers(injectors).covers(intake));

        Answer asked =
                shop().asks(about(car).plus("proposed", proposes(injectors)).plus("proposed", proposes(intake)));

        assertThat(asked.json().path("mismatches")).hasSize(2);
        assertThat(asked.json().path("coveringCalibrations").path(0).path("id").asString())
                .isEqualTo(both.id());
        assertThat(asked.field("letter")).contains("A flash of " + both.name());

        Answer withIt = shop().asks(about(car)
                .with("calibrationId", both.id())
                .plus("proposed", proposes(injectors))
                .plus("proposed", proposes(intake)));
        assertThat(withIt.field("answer")).isEqualTo("COVERED");
        assertThat(withIt.json().path("reasons").toString()).contains("has to be flashed before");
    }

    @Test
    void whereNoRevisionCoversItTheNearestSayWhatTheyLack() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer asked = shop().asks(about(car).plus("proposed", proposes(shop().injectors(650))));

        assertThat(asked.json().path("coveringCalibrations")).isEmpty();
        JsonNode near = asked.json().path("nearestCalibrations").path(0);
        assertThat(near.path("lacks").path(0).path("category").asString()).isEqualTo("INJECTORS");
    }

    @Test
    void aWithdrawnRevisionCoversNothing() {
        FinishedCar finished = shop().finishesACar();
        shop().withdraws(finished.calibration());

        Answer asked = shop().asks(about(finished.car())
                .with("calibrationId", finished.calibration().id()));

        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("was withdrawn");
        assertThat(asked.json().path("coveringCalibrations")).isEmpty();
    }

    @Test
    void aCarThatIsNotInTheRegisterIsDescribed() {
        Car known = shop().aCarCalibratedFor(shop().injectors(440));
        Part fitted = shop().injectors(440);
        Calibration calibration = shop().issues(RevisionDraft.forThe(known).covers(fitted));
        Body described = Body.of("ecuHardware", known.ecuHardware())
                .with("calibrationId", calibration.id())
                .plus("parts", Body.of("category", "INJECTORS").with("partSpecId", fitted.id()));

        assertThat(shop().asks(described).field("answer")).isEqualTo("COVERED");
        assertThat(shop().asks(described.plus("proposed", proposes(shop().aPartFor("DOWNPIPE"))))
                        .field("answer"))
                .isEqualTo("RETUNE_FIRST");
        // no calibration named: the factory's
        assertThat(shop().asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(shop().injectors(440))))
                        .field("letter"))
                .contains("Calibration: factory calibration");
        assertThat(shop().asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(shop().injectors(440))))
                        .field("answer"))
                .isEqualTo("RETUNE_FIRST");
        assertThat(shop().asks(Body.of("ecuHardware", "ZZ-1")
                                .plus(
                                        "proposed",
                                        Body.of("category", "INJECTORS").with("action", "REFIT_FACTORY")))
                        .field("answer"))
                .isEqualTo("COVERED");
    }

    @Test
    void aRevisionForOtherEcuHardwareIsNoAnswer() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Calibration other =
                shop().issues(RevisionDraft.forEcu("OTHER-" + UUID.randomUUID()).covers(shop().injectors(440)));
        Answer asked = shop().asks(about(car).with("calibrationId", other.id()));
        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("was written for the ECU hardware");
    }

    @Test
    void badQuestionsSayWhatToDo() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Api writer = shop().as(Role.WRITER);
        Body proposal = proposes(shop().injectors(650));
        writer.post("/advice", Body.empty().plus("proposed", proposal)).isInvalid("ecuHardware");
        writer.post("/advice", about(car)).isInvalid("proposed");
        writer.post("/advice", about(car).with("ecuHardware", "NX-1").plus("proposed", proposal))
                .isInvalid("ecuHardware");
        writer.post("/advice", about(car).plus("proposed", Body.of("action", "FIT")))
                .isInvalid("proposed[0].category");
        writer.post("/advice", about(car).plus("proposed", proposal.with("category", "DOWNPIPE")))
                .isInvalid("proposed[0].partSpecId");
        writer.post("/advice", about(car).plus("proposed", proposal.with("partSpecId", UUID.randomUUID())))
                .isInvalid("proposed[0].partSpecId");
        writer.post("/advice", about(car).with("calibrationId", UUID.randomUUID()))
                .isInvalid("calibrationId");
        writer.post("/advice", Body.of("vehicleId", UUID.randomUUID()).plus("proposed", proposal))
                .isProblem(404, "not-found");
        shop().as(Role.AUDITOR)
                .post("/advice", about(car).plus("proposed", proposal))
                .isProblem(403, "forbidden");
    }
}
