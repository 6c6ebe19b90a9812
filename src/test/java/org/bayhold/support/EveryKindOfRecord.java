package org.bayhold.support;

import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.adjust;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fitUnidentified;
import static org.bayhold.support.Facts.foundFactory;
import static org.bayhold.support.Facts.foundPart;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.remove;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.bayhold.drivelog.SentLog;

/** A shop in which everything has happened that can be recorded, so that no table of the record is empty. */
public final class EveryKindOfRecord {
    private EveryKindOfRecord() {}

    public static void in(Shop shop) {
        FinishedCar finished = shop.finishesACar();
        Car car = finished.car();
        car.handsOver();
        shop.as(Role.WRITER)
                .post(car.path("arrivals"), Body.of("odometerKm", 48_900).with("note", "a rattle on the left"))
                .is(201);
        amend(shop, car, Body.of("plate", "B-KX 7").with("engine", "NW20T evo"));
        amend(shop, car, Body.of("customer", Body.of("name", "Odo Marchetti").with("phone", "+1 555 0177")));
        amend(shop, car, Body.of("plate", "B-OLD 1").with("engine", "NW20").at(hoursAgo(2)));
        car.asksToLeave().isHeld();
        car.isInspected(foundPart(finished.intake()), foundFactory("INJECTORS"));

        Answer wrong = car.changes(remove("TURBOCHARGER"));
        car.strikesOut(wrong);
        Answer reported = car.changes(adjust("WASTEGATE").reported());
        plan(shop, car);
        car.asksToLeaveByException(exception().with("limitations", "no more than 3000 rpm"))
                .is(201);
        car.strikesOut(reported);

        Car strange = shop.registers(aCarOfUnknownHistory());
        strange.changes(fitUnidentified("INJECTORS"));
        strange.flashes(dealersUpdate());
        strange.isInspectedThroughout();
        strange.readsBack(Facts.aStrangeReading());
        strange.readsBack(Facts.aStrangeReading().with("troubleCodes", List.of("P0171", "P0420")));

        Part sensor = shop.catalogues(Facts.aPart("AIRFLOW_SENSOR")
                .with("attributes", Body.of("sensorBoreMm", 80.25).with("transfer", aCurve()))
                .with("complianceNote", "EO 11-7"));
        drive(shop, strange);

        Car late = shop.registers(aCar());
        late.fits(sensor);
        Calibration both = shop.issues(RevisionDraft.forThe(late)
                .coversOrFactory(sensor, shop.aPartFor("AIRFLOW_SENSOR"))
                .coversLine(Body.of("category", "DOWNPIPE")
                        .with("position", "Left ")
                        .with("factoryAllowed", true)
                        .with("noneAllowed", true))
                .withMap("98 octane")
                .withMap(Body.of("name", "Valet")
                        .with(
                                "fuels",
                                List.of(
                                        shop.aPartFor("FUEL").id(),
                                        shop.aPartFor("FUEL").id()))
                        .with("factoryFuel", true)
                        .with("note", "for the garage around the corner"))
                .with("boostTargetKpa", 142.125)
                .with("limits", "98 octane")
                .with("assumes", Body.of("fuel", "98").with("stoich", 14.7).with("far", 1e21))
                .with("note", "for the blue hatchback"));
        late.flashes(failedFlash(both));
        late.isFinishedWith(both);
        late.changes(adjust("CAM_TIMING").at(hoursAgo(70)));
        late.changes(remove("AIR_INTAKE").at(Instant.parse("0987-06-05T04:03:02.123456Z")));
        shop.corrects(sensor);
        shop.withdraws(both);

        advise(shop, late, sensor);

        Object hours = shop.policy().path("readBackMaxAgeHours").asInt();
        shop.as(Role.MANAGER)
                .put("/policy", Body.of("readBackMaxAgeHours", hours))
                .is(200);
        for (boolean noEffect : new boolean[] {true, false}) {
            shop.as(Role.MANAGER)
                    .post(
                            "/categories/COSMETIC/moves",
                            Body.of("noEffect", noEffect).with("reason", "stickers"))
                    .is(201);
        }
        shop.as(Role.MANAGER)
                .post("/categories/COSMETIC/moves", Body.of("noEffect", true).with("reason", "stickers after all"))
                .is(201);
    }

    /** Judged twice, with headings that the shop has told. */
    private static void drive(Shop shop, Car car) {
        shop.as(Role.CALIBRATOR)
                .put(
                        "/drive-log-columns",
                        Body.of("Sonde 4", "MEASURED_LAMBDA")
                                .with(
                                        "Ladedruck",
                                        Body.of("parameter", "MANIFOLD_PRESSURE")
                                                .with("unit", "BAR"))
                                .with("Gang", null))
                .is(200);
        Answer log = shop.as(Role.TECH)
                .postFile(
                        car.path("drive-logs"),
                        SentLog.sound(5),
                        Map.of("venue", "DYNO", "performedBy", "Tariq Boone", "note", "with a full tank"))
                .is(201);
        shop.as(Role.TECH)
                .post(
                        car.path("drive-logs/" + log.id() + "/judgements"),
                        Body.of("columns", Body.of("Knock retard (deg)", null)))
                .is(201);
    }

    private static void advise(Shop shop, Car car, Part part) {
        shop.as(Role.CALIBRATOR)
                .post(
                        "/part-specs/" + part.id() + "/benefit-notes",
                        Body.of("effect", "HARMS")
                                .with("engine", "NW20")
                                .with("note", "reads the pulses of this engine"))
                .is(201);
        Part next = shop.catalogues(Facts.aPart("AIRFLOW_SENSOR").with("supersedes", part.id()));
        Answer answer = shop.as(Role.WRITER)
                .post(
                        "/advice",
                        Body.of("vehicleId", car.id())
                                .plus("proposed", Facts.fit(next).without("source"))
                                .with("question", "May I run the newer meter?")
                                .with("askedBy", "Odo Marchetti"))
                .is(201);
        String plan = "/advice/" + answer.id() + "/planned-work";
        shop.as(Role.WRITER).post(plan, Body.empty()).is(201);
        shop.as(Role.WRITER).post(plan + "/dropping", Body.empty()).is(200);
        shop.as(Role.TECH).post(plan, Body.empty()).is(201);
    }

    /** With figures that JSON writes in more than one way. */
    private static List<List<Number>> aCurve() {
        return List.of(List.of(1e-7, 0), List.of(1, 2.5), List.of(2.125, 20), List.of(4, 1e2));
    }

    private static void amend(Shop shop, Car car, Body patch) {
        Api writer = shop.as(Role.WRITER);
        String etag = writer.get("/vehicles/" + car.id()).is(200).etag();
        writer.withIfMatch(etag).patch("/vehicles/" + car.id(), patch).is(200);
    }

    private static void plan(Shop shop, Car car) {
        Api tech = shop.as(Role.TECH);
        String item = "/retune-items/" + car.openItem().id();
        Body plan = Body.of("assignee", "Tariq Boone")
                .with("promisedAt", Instant.now().plusSeconds(90_000))
                .with("note", "ask for the spring rate");
        tech.withIfMatch(tech.get(item).is(200).etag()).patch(item, plan).is(200);
    }
}
