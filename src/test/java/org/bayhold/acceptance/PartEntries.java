package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What may be recorded of a part, over the API and on the page: the computation rests on it. */
public abstract class PartEntries implements OnADatabase {
    private static final List<List<Double>> CURVE =
            List.of(List.of(0.5, 1.0), List.of(1.5, 6.0), List.of(2.5, 25.0), List.of(4.5, 140.0));

    static Stream<Arguments> refused() {
        return Stream.of(
                arguments("INJECTORS", "flowCcPerMin", -440, "20 cc/min", "20000 cc/min"),
                arguments("INJECTORS", "flowCcPerMin", 0, "20 cc/min", "20000 cc/min"),
                arguments("INJECTORS", "flowCcPerMin", 1e300, "20 cc/min", "20000 cc/min"),
                arguments("INJECTORS", "flowCcPerMin", "440", "20 cc/min", "20000 cc/min"),
                arguments("AIR_INTAKE", "sensorBoreMm", 3.15, "20 mm", "200 mm"),
                arguments("AIR_INTAKE", "sensorBorMm", 80, "sensorBoreMm", "20 mm … 200 mm"),
                arguments("AIR_INTAKE", "sensor_bore_mm", 80, "sensorBoreMm", "20 mm … 200 mm"),
                arguments("AIR_INTAKE", "flowCcPerMin", 440, "sensorBoreMm (20 mm … 200 mm)", "ductShape"),
                arguments("FUEL", "ethanolPercent", 101, "0 %", "100 %"),
                arguments("FUEL_PRESSURE_REGULATOR", "reference", "VACUUM", "MANIFOLD", "ATMOSPHERE"),
                arguments("AIRFLOW_SENSOR", "transfer", CURVE.subList(0, 3), "4", "400"),
                arguments("AIRFLOW_SENSOR", "transfer", falling(), "rise", "400"),
                arguments("AIRFLOW_SENSOR", "transfer", List.of(), "rise", "400"),
                arguments("AIRFLOW_SENSOR", "transfer", 4, "rise", "400"));
    }

    @ParameterizedTest
    @MethodSource("refused")
    void aWrongAttributeIsRefusedWithWhatIsAllowed(
            String category, String name, Object value, String allowed, String more) {
        Body part = aPart(category).with("attributes", Body.of(name, value));

        shop().as(Role.CALIBRATOR).post("/part-specs", part).isInvalid("attributes." + name);

        assertThat(shop().as(Role.CALIBRATOR)
                        .post("/part-specs", part)
                        .json()
                        .path("errors")
                        .toString())
                .contains(allowed, more);
    }

    @Test
    void aCorrectionIsHeldToTheSame() {
        Part injectors = shop().aPartFor("INJECTORS");

        shop().as(Role.CALIBRATOR)
                .post(
                        "/part-specs/" + injectors.id() + "/corrections",
                        Body.of("attributes", Body.of("sensorBoreMm", 80)).with("reason", "read off the wrong line"))
                .isInvalid("attributes.sensorBoreMm");
    }

    @Test
    void anAssumptionIsHeldToItsRangeAndANoteOfTheShopIsNot() {
        Body revision = Body.of("name", "Finch")
                .with("revision", "1")
                .with("ecuHardware", "AF20-11")
                .with("fileSha256", "a".repeat(64))
                .with("coverage", List.of())
                .with("assumes", Body.of("trimAuthorityPercent", 0).with("fuel", "98"));

        shop().as(Role.CALIBRATOR).post("/calibrations", revision).isInvalid("assumes.trimAuthorityPercent");
    }

    @Test
    void aCurveIsPastedBelowItsName() {
        Visitor calibrator = shop().visitor(Role.CALIBRATOR);
        Visitor.Shown form = calibrator.opens("/parts/new").is(200);
        assertThat(form.text())
                .contains("What each place takes", "sensorBoreMm 20 mm … 200 mm Inner bore of the tube")
                .contains("One of MANIFOLD, ATMOSPHERE");

        Body part = aPart("AIRFLOW_SENSOR");
        Visitor.Shown added = calibrator
                .sends("/parts/new", typed(part, "transfer =\n0.5\t1\n1.5; 6\n2.5, 25\n4.5 140\nsensorBoreMm = 71"))
                .is(200);

        assertThat(added.path()).startsWith("/parts/");
        assertThat(shop().as(Role.WRITER)
                        .get("/part-specs/" + added.path().substring("/parts/".length()))
                        .is(200)
                        .json()
                        .path("attributes")
                        .path("transfer")
                        .toString())
                .isEqualTo("[[0.5,1],[1.5,6],[2.5,25],[4.5,140]]");
    }

    @Test
    void thePageRefusesWhatTheApiRefuses() {
        Visitor calibrator = shop().visitor(Role.CALIBRATOR);
        Visitor.Shown ignored = calibrator.opens("/parts/new").is(200);
        Body part = aPart("AIRFLOW_SENSOR");

        Visitor.Shown refused =
                calibrator.sends("/parts/new", typed(part, "transfer =\n0.5 1\n1.5 6\nsensorBoreMm = 7"));

        assertThat(refused.text()).contains("transfer must be a table of 4 to 400 rows", "20 mm to 200 mm");
    }

    /** docs/rules.md, rule 3: a revision covers what it names, whatever the maker's list says. */
    @Test
    void aSupersessionIsALinkAndCoversNothing() {
        Part old = shop().aPartFor("INJECTORS");
        Part next = shop().catalogues(aPart("INJECTORS").with("supersedes", old.id()));
        Car car = shop().registers(aCar());
        car.fits(old);
        car.isFinishedWith(shop().issues(RevisionDraft.forThe(car).covers(old)));

        Visitor writer = shop().visitor(Role.WRITER);
        assertThat(writer.opens("/parts/" + old.id()).is(200).text())
                .contains("It is superseded by", next.partNumber(), "covers only the parts that it names");
        assertThat(writer.opens("/parts/" + next.id()).is(200).text()).contains("It supersedes", old.partNumber());
        car.fits(next);
        car.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "PARTS_COVERED", "RETUNE_CLEARED");

        shop().as(Role.WRITER)
                .post("/part-specs", aPart("DOWNPIPE").with("supersedes", old.id()))
                .isInvalid("supersedes");
    }

    @Test
    void aSupersessionIsTypedByItsNumber() {
        Part old = shop().aPartFor("AIRFLOW_SENSOR");
        Visitor calibrator = shop().visitor(Role.CALIBRATOR);
        Visitor.Shown ignored = calibrator.opens("/parts/new").is(200);
        Map<String, String> typed = typed(aPart("AIRFLOW_SENSOR"), "");
        typed.put("supersedes", "no such number");
        assertThat(calibrator.sends("/parts/new", typed).text()).contains("Type the number of one part");
        typed.put("supersedes", old.partNumber());
        assertThat(calibrator.sends("/parts/new", typed).is(200).text()).contains("It supersedes", old.partNumber());
    }

    private static Map<String, String> typed(Body part, String attributes) {
        Map<String, String> typed = new HashMap<>();
        for (String field : List.of("category", "maker", "partNumber", "specRevision")) {
            typed.put(field, part.text(field));
        }
        typed.put("attributes", attributes);
        return typed;
    }

    private static List<List<Double>> falling() {
        return List.of(CURVE.get(0), CURVE.get(2), CURVE.get(1), CURVE.get(3));
    }
}
