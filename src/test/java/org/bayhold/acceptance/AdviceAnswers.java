package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.aPart;
import static org.bayhold.support.Facts.fit;

import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
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
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** May I run this part with my calibration? docs/rules.md, "Advice". */
public abstract class AdviceAnswers implements OnADatabase {
    @Test
    void aPartThatTheCalibrationWasNotWrittenForIsRetunedFirst() {
        Car car = calibratedFor(injectors(440));
        Answer asked = asks(about(car).plus("proposed", proposes(injectors(650))));

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
        Car car = calibratedFor(injectors(440));
        List<String> added = car.recordsAddedBy(() -> asks(about(car).plus("proposed", proposes(injectors(650)))));

        assertThat(added).isEmpty();
        assertThat(car.gate().decision()).isEqualTo("CLEAR");
    }

    @Test
    void aLikePartThatTheCalibrationNamesIsCoveredAndStillToBeSignedOff() {
        Car car = shop().registers(aCar());
        Part one = injectors(440);
        Part equal = injectors(440);
        car.fits(one);
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(one, equal)));

        Answer asked = asks(about(car).plus("proposed", proposes(equal)));

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
        assertThat(asks(about(stranger).plus("proposed", proposes(injectors(440))))
                        .field("answer"))
                .isEqualTo("UNKNOWN_PARTS");

        Car car = calibratedFor(injectors(440));
        Answer unlisted = asks(
                about(car).plus("proposed", Body.of("category", "TURBOCHARGER").with("action", "FIT")));
        assertThat(unlisted.field("answer")).isEqualTo("UNKNOWN_PARTS");
        assertThat(unlisted.json().path("reasons").toString()).contains("the catalogue does not know this part");
    }

    @Test
    void anotherSettingIsAnotherCar() {
        Car car = calibratedFor(injectors(440));
        Answer asked = asks(
                about(car).plus("proposed", Body.of("category", "WASTEGATE").with("action", "ADJUST")));
        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("Another setting is another car", "Wastegate");
    }

    @Test
    void severalPartsAreAnsweredTogether() {
        Car car = calibratedFor(injectors(440));
        Part injectors = injectors(650);
        Part intake = shop().aPartFor("AIR_INTAKE");
        Calibration both =
                shop().issues(RevisionDraft.forThe(car).covers(injectors).covers(intake));

        Answer asked = asks(about(car).plus("proposed", proposes(injectors)).plus("proposed", proposes(intake)));

        assertThat(asked.json().path("mismatches")).hasSize(2);
        assertThat(asked.json().path("coveringCalibrations").path(0).path("id").asString())
                .isEqualTo(both.id());
        assertThat(asked.field("letter")).contains("A flash of " + both.name());

        Answer withIt = asks(about(car)
                .with("calibrationId", both.id())
                .plus("proposed", proposes(injectors))
                .plus("proposed", proposes(intake)));
        assertThat(withIt.field("answer")).isEqualTo("COVERED");
        assertThat(withIt.json().path("reasons").toString()).contains("has to be flashed before");
    }

    @Test
    void whereNoRevisionCoversItTheNearestSayWhatTheyLack() {
        Car car = calibratedFor(injectors(440));
        Answer asked = asks(about(car).plus("proposed", proposes(injectors(650))));

        assertThat(asked.json().path("coveringCalibrations")).isEmpty();
        JsonNode near = asked.json().path("nearestCalibrations").path(0);
        assertThat(near.path("lacks").path(0).path("category").asString()).isEqualTo("INJECTORS");
    }

    @Test
    void aWithdrawnRevisionCoversNothing() {
        FinishedCar finished = shop().finishesACar();
        shop().withdraws(finished.calibration());

        Answer asked = asks(about(finished.car())
                .with("calibrationId", finished.calibration().id()));

        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("was withdrawn");
        assertThat(asked.json().path("coveringCalibrations")).isEmpty();
    }

    @Test
    void aCarThatIsNotInTheRegisterIsDescribed() {
        Car known = calibratedFor(injectors(440));
        Part fitted = injectors(440);
        Calibration calibration = shop().issues(RevisionDraft.forThe(known).covers(fitted));
        Body described = Body.of("ecuHardware", known.ecuHardware())
                .with("calibrationId", calibration.id())
                .plus("parts", Body.of("category", "INJECTORS").with("partSpecId", fitted.id()));

        assertThat(asks(described).field("answer")).isEqualTo("COVERED");
        assertThat(asks(described.plus("proposed", proposes(shop().aPartFor("DOWNPIPE"))))
                        .field("answer"))
                .isEqualTo("RETUNE_FIRST");
        // no calibration named: the factory's
        assertThat(asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(injectors(440))))
                        .field("letter"))
                .contains("Calibration: factory calibration");
        assertThat(asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(injectors(440))))
                        .field("answer"))
                .isEqualTo("RETUNE_FIRST");
        assertThat(asks(Body.of("ecuHardware", "ZZ-1")
                                .plus(
                                        "proposed",
                                        Body.of("category", "INJECTORS").with("action", "REFIT_FACTORY")))
                        .field("answer"))
                .isEqualTo("COVERED");
    }

    @Test
    void aRevisionForOtherEcuHardwareIsNoAnswer() {
        Car car = calibratedFor(injectors(440));
        Calibration other =
                shop().issues(RevisionDraft.forEcu("OTHER-" + UUID.randomUUID()).covers(injectors(440)));
        Answer asked = asks(about(car).with("calibrationId", other.id()));
        assertThat(asked.field("answer")).isEqualTo("RETUNE_FIRST");
        assertThat(asked.json().path("reasons").toString()).contains("was written for the ECU hardware");
    }

    @Test
    void whatAPartBringsNothingOnIsSaid() {
        Body carBody = aCar().with("engine", "2.0 turbo");
        Car car = shop().registers(carBody);
        Part filter = shop().aPartFor("AIR_FILTER");
        Body note = Body.of("effect", "BRINGS_NOTHING")
                .with("engine", "2.0  Turbo")
                .with("note", "The factory box flows more than this engine takes.");
        shop().as(Role.WRITER)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note)
                .is(403);
        shop().as(Role.CALIBRATOR)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note)
                .is(201);

        String thoughts = asks(about(car).plus("proposed", proposes(filter)))
                .json()
                .path("secondThoughts")
                .toString();
        assertThat(thoughts).contains("brings nothing on this car", "factory box flows more", "leave the car as it is");

        shop().as(Role.CALIBRATOR)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note.with("effect", "NO_OBJECTION"))
                .is(201);
        assertThat(asks(about(car).plus("proposed", proposes(filter)))
                        .json()
                        .path("secondThoughts")
                        .toString())
                .doesNotContain("brings nothing");
        assertThat(shop().as(Role.WRITER).list("/part-specs/" + filter.id() + "/benefit-notes"))
                .isEmpty();
    }

    @Test
    void answersAreKeptAndFound() {
        Car car = calibratedFor(injectors(440));
        Part wanted = injectors(650);
        String word = "quokka" + UUID.randomUUID();
        Answer asked = asks(about(car)
                .plus("proposed", proposes(wanted))
                .with("question", "May I run the big " + word + "?")
                .with("askedBy", "Ines Okoro"));

        Api writer = shop().as(Role.WRITER);
        assertThat(writer.get("/advice/" + asked.id()).is(200).json()).isEqualTo(asked.json());
        for (String text : List.of(word, wanted.partNumber(), car.vin())) {
            assertThat(writer.list("/advice?vehicleId=" + car.id() + "&q=" + Shop.encoded(text)))
                    .as(text)
                    .hasSize(1);
        }
        assertThat(writer.list("/advice?q=" + word)).hasSize(1);
        assertThat(writer.list("/advice?vehicleId=" + car.id() + "&q=nothing-like-it"))
                .isEmpty();
        assertThat(asked.field("letter")).contains("You asked: May I run the big " + word);
    }

    @Test
    void theLetterIsAPdfThatSaysTheSame() throws IOException {
        Car car = calibratedFor(injectors(440));
        Answer asked = asks(about(car)
                .plus("proposed", proposes(injectors(650)))
                .with("question", "Геннадий & Søren <b>ask</b>: Ωmega?"));
        Api writer = shop().as(Role.WRITER);

        byte[] pdf = writer.withHeader("Accept", "application/pdf").download("/advice/" + asked.id() + "/letter");
        String read;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            read = new PDFTextStripper().getText(document);
        }
        assertThat(words(read)).contains(words("You asked: Геннадий & Søren <b>ask</b>: Ωmega?"));
        asked.field("letter")
                .lines()
                .forEach(line -> assertThat(words(read)).contains(words(line.replaceFirst("^- ", ""))));
    }

    @Test
    void anAnswerBecomesPlannedWorkUntilItIsDroppedOnce() {
        Car car = calibratedFor(injectors(440));
        Answer asked = asks(about(car).plus("proposed", proposes(injectors(650))));
        Api writer = shop().as(Role.WRITER);
        String plan = "/advice/" + asked.id() + "/planned-work";

        writer.post(plan, "{}").is(201);
        assertThat(writer.get("/advice/" + asked.id()).json().path("planned").isNull())
                .isFalse();
        writer.post(plan, "{}").isProblem(409, "conflict");
        writer.post(plan + "/dropping", "{}").is(200);
        writer.post(plan + "/dropping", "{}").isProblem(409, "conflict");
        assertThat(writer.get("/advice/" + asked.id()).json().path("planned").isNull())
                .isTrue();

        Answer stranger = asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(injectors(440))));
        writer.post("/advice/" + stranger.id() + "/planned-work", "{}").isProblem(409, "conflict");
    }

    @Test
    void badQuestionsSayWhatToDo() {
        Car car = calibratedFor(injectors(440));
        Api writer = shop().as(Role.WRITER);
        Body proposal = proposes(injectors(650));
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

    private Answer asks(Body question) {
        return shop().as(Role.WRITER).post("/advice", question).is(201);
    }

    /** Whatever the lines are broken at. */
    private static String words(String text) {
        return text.replaceAll("\\s+", "");
    }

    private static Body about(Car car) {
        return Body.of("vehicleId", car.id());
    }

    private static Body proposes(Part part) {
        return fit(part).without("source");
    }

    private Car calibratedFor(Part injectors) {
        Car car = shop().registers(aCar());
        car.fits(injectors);
        return car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(injectors)));
    }

    private Part injectors(double ccPerMin) {
        return shop().catalogues(aPart("INJECTORS")
                .with("attributes", Body.of("flowCcPerMin", ccPerMin).with("ratedPressureKpa", 300)));
    }
}
