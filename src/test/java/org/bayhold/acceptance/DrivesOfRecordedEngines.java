package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;
import static org.bayhold.support.Facts.aPart;

import java.util.List;
import java.util.Map;
import org.bayhold.drivelog.SentLog;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.Facts;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** What the record knows of an engine, and what that does to the verdict on its drives: docs/drive-log.md, D4 and D17. */
public abstract class DrivesOfRecordedEngines implements OnADatabase {
    /** Two standard errors hold the truth in 19 of 20 drives, not in all: this is one whose fit comes close to it. */
    private static final long CLOSE_TO_THE_TRUTH = 44;

    private final long seed = Seed.OF_THIS_RUN;

    private Answer sends(Car car, byte[] file) {
        return shop().as(Role.TECH).postFile(car.path("drive-logs"), file, Map.of("venue", "DYNO"));
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

    private static JsonNode finding(Answer drive, String code) {
        return elements(drive.json().path("findings")).stream()
                .filter(found -> textOf(found.path("code")).equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(drive.toString()));
    }

    /** By the area of the bores: (70 / 66)² = 1.1249. */
    @Test
    void aDriveConfirmsWhatThePartsLeadOneToExpect() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(intake(70));

        JsonNode scale =
                finding(sends(car, SentLog.ofALargerIntake(CLOSE_TO_THE_TRUTH)).is(201), "SCALE_ERROR");

        assertThat(scale.path("numbers").path("expectedPercent").asDouble()).isBetween(12.48, 12.50);
        assertThat(textOf(scale.path("sentence"))).contains("the log confirms the mismatch");
    }

    @Test
    void anErrorThatNoPartExplainsIsSaidToBeOne() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        car.fits(shop().injectors(450));

        JsonNode scale = finding(sends(car, SentLog.ofALargerIntake(seed)).is(201), "SCALE_ERROR");

        assertThat(textOf(scale.path("sentence"))).contains("something else is wrong as well");
    }

    @Test
    void whereEveryPartIsCoveredNothingIsExpected() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));

        JsonNode scale = finding(sends(car, SentLog.ofALargerIntake(seed)).is(201), "SCALE_ERROR");

        assertThat(scale.path("numbers").path("expectedPercent").isNumber()).isFalse();
        assertThat(textOf(scale.path("sentence"))).doesNotContain("lead one to expect");
    }

    @Test
    void anEngineThatIsRunInNeedsNoFullLoad() {
        Car car = shop().registers(Facts.aCar());
        Part assembly = shop().aPartFor("ROTATING_ASSEMBLY");
        car.fits(assembly);
        byte[] calm = SentLog.withoutFullLoad(seed);
        car.flashes(shop().issues(RevisionDraft.forThe(car).covers(assembly)));
        assertThat(sends(car, calm).is(201).field("verdict")).isEqualTo("INSUFFICIENT");

        car.flashes(shop().issues(RevisionDraft.forThe(car)
                .covers(assembly)
                .with("purpose", "RUN_IN")
                .with("limits", "below 3500 rpm for the first thousand kilometres")));
        Answer runIn = sends(car, SentLog.withoutFullLoad(seed + 1)).is(201);

        assertThat(runIn.field("verdict")).as(runIn.toString()).isEqualTo("PASS");
    }

    @Test
    void noDriveOfACompressionIgnitionEngineIsJudged() {
        Car car = shop().registers(Facts.aCar());
        Part intake = intake(66);
        car.fits(intake);
        car.flashes(shop().issues(
                        RevisionDraft.forThe(car).covers(intake).with("assumes", Body.of("ignition", "COMPRESSION"))));
        int before = car.history().size();

        Answer refused = sends(car, SentLog.sound(seed)).isProblem(400, "invalid");

        assertThat(textOf(refused.json().path("errors").get(0).path("message")))
                .contains("spark-ignition engines only");
        assertThat(car.history()).hasSize(before);
    }

    /** A drive is of the moment when it ended, whatever was changed since. */
    @Test
    void anEarlierDriveIsJudgedAgainstTheCarAsItWasThen() {
        Car car = shop().aCarCalibratedFor(intake(66), shop().injectors(440));
        String before = Facts.minutesAgo(0).toString();
        car.fits(intake(70));

        Answer drive = shop().as(Role.TECH)
                .postFile(car.path("drive-logs"), SentLog.ofALargerIntake(seed), Map.of("effectiveAt", before))
                .is(201);

        assertThat(textOf(finding(drive, "SCALE_ERROR").path("sentence"))).doesNotContain("lead one to expect");
    }

    /** Who drove, and where, is of the drive: a second judgement does not lose it. */
    @Test
    void aSecondJudgementKeepsWhoDroveAndWhere() {
        Car car = shop().finishesACar().car();
        Answer first = shop().as(Role.TECH)
                .postFile(
                        car.path("drive-logs"),
                        SentLog.sound(seed),
                        Map.of("venue", "TRACK", "performedBy", "Odile Marsh", "note", "damp, 9 °C"))
                .is(201);

        Answer again = shop().as(Role.TECH)
                .post(car.path("drive-logs/" + first.id() + "/judgements"), Body.empty())
                .is(201);

        for (String field : List.of("venue", "performedBy", "note", "effectiveAt", "fileSha256")) {
            assertThat(again.field(field)).as(field).isEqualTo(first.field(field));
        }
    }
}
