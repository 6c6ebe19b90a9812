package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.acknowledgement;
import static org.bayhold.support.Facts.change;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.foundFactory;
import static org.bayhold.support.Facts.inspection;
import static org.bayhold.support.Facts.remove;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Facts of a car that cannot be recorded: the field and the reason are said, and nothing changed. */
public abstract class BadFacts implements OnADatabase {
    private static final Instant TOMORROW = Instant.now().plusSeconds(86_400);

    /** What is sent for a finished car. */
    interface Content extends BiFunction<Shop, FinishedCar, Body> {}

    static Stream<Arguments> badFacts() {
        return Stream.of(
                partChange("category", "an unknown category", remove("FLUX_CAPACITOR")),
                partChange("category", "no category", remove("AIR_FILTER").without("category")),
                partChange("action", "an unknown action", change("AIR_FILTER", "POLISH")),
                partChange("action", "no action", remove("AIR_FILTER").without("action")),
                partChange("source", "an unknown source", remove("AIR_FILTER").with("source", "RUMOUR")),
                partChange(
                        "action",
                        "an action by its number",
                        remove("AIR_FILTER").with("action", 1)),
                partChange(
                        "effectiveAt",
                        "seconds since 1970",
                        remove("AIR_FILTER").with("effectiveAt", 1_700_000_000)),
                partChange("effectiveAt", "no time", remove("AIR_FILTER").with("effectiveAt", "")),
                partChange(
                        "effectiveAt",
                        "before the first year",
                        remove("AIR_FILTER").with("effectiveAt", "-0044-03-15T12:00:00Z")),
                partChange("partSpecId", "an empty id", remove("AIR_FILTER").with("partSpecId", "")),
                partChange("source", "no source", remove("AIR_FILTER").without("source")),
                bad(
                        "partSpecId",
                        "a part spec of another category",
                        "part-changes",
                        (shop, done) -> fit(done.intake()).with("category", "TURBOCHARGER")),
                partChange(
                        "partSpecId",
                        "a part spec that nobody catalogued",
                        change("AIR_FILTER", "FIT")
                                .with("partSpecId", UUID.randomUUID().toString())),
                partChange(
                        "partSpecId",
                        "a part spec whose id is none",
                        change("AIR_FILTER", "FIT").with("partSpecId", "seventeen")),
                partChange("note", "a part that is neither named nor described", change("AIR_FILTER", "FIT")),
                partChange(
                        "effectiveAt",
                        "a change of tomorrow",
                        remove("AIR_FILTER").at(TOMORROW)),
                partChange(
                        "effectiveAt",
                        "a time that is none",
                        remove("AIR_FILTER").with("effectiveAt", "noon")),
                partChange(
                        "odometerKm",
                        "a negative odometer",
                        remove("AIR_FILTER").with("odometerKm", -1)),
                partChange(
                        "odometerKm",
                        "an odometer in words",
                        remove("AIR_FILTER").with("odometerKm", "many")),
                partChange(
                        "torqueNm",
                        "a field that nobody knows",
                        remove("AIR_FILTER").with("torqueNm", 30)),
                partChange("note", "over-long text", remove("AIR_FILTER").with("note", "n".repeat(20_000))),
                partChange("note", "text with U+0000", remove("AIR_FILTER").with("note", "before\0after")),
                bad(
                        "calibrationId",
                        "a SHOP flash for other ECU hardware",
                        "flashes",
                        (shop, done) -> flash(
                                shop.issues(RevisionDraft.forEcu("HW-ELSEWHERE").covers(done.intake())))),
                bad("calibrationId", "a SHOP flash of a withdrawn revision", "flashes", (shop, done) -> {
                    Calibration withdrawn = shop.issues(RevisionDraft.forThe(done.car()));
                    shop.withdraws(withdrawn);
                    return flash(withdrawn);
                }),
                bad(
                        "calibrationId",
                        "a revision that nobody issued",
                        "flashes",
                        (shop, done) -> flash(done.calibration())
                                .with("calibrationId", UUID.randomUUID().toString())),
                bad(
                        "note",
                        "a strange file without a word about it",
                        "flashes",
                        (shop, done) -> dealersUpdate().without("note")),
                bad(
                        "outcome",
                        "an unknown outcome",
                        "flashes",
                        (shop, done) -> flash(done.calibration()).with("outcome", "PERHAPS")),
                bad(
                        "outcome",
                        "no outcome",
                        "flashes",
                        (shop, done) -> flash(done.calibration()).without("outcome")),
                bad(
                        "effectiveAt",
                        "a flash of tomorrow",
                        "flashes",
                        (shop, done) -> flash(done.calibration()).at(TOMORROW)),
                bad("cvn", "a CALID without a CVN", "read-backs", (shop, done) -> Body.of("calid", "BENCH000001AA")),
                bad("calid", "a CVN without a CALID", "read-backs", (shop, done) -> Body.of("cvn", "2D99C26C")),
                bad("fileSha256", "a hash that is none", "read-backs", (shop, done) -> Body.of("fileSha256", "abc")),
                bad(
                        "effectiveAt",
                        "an ECU check of tomorrow",
                        "read-backs",
                        (shop, done) -> done.calibration().reading().at(TOMORROW)),
                bad("lines", "an inspection of nothing", "inspections", (shop, done) -> inspection(List.of())),
                bad(
                        "lines[0].category",
                        "an inspected place that is none",
                        "inspections",
                        (shop, done) -> inspection(List.of(foundFactory("FLUX_CAPACITOR")))),
                bad(
                        "lines[0].state",
                        "a state that is none",
                        "inspections",
                        (shop, done) ->
                                inspection(List.of(foundFactory("AIR_FILTER").with("state", "SHINY")))),
                bad(
                        "lines[1].partSpecId",
                        "a part that is not named",
                        "inspections",
                        (shop, done) -> inspection(List.of(
                                foundFactory("TURBOCHARGER"),
                                foundFactory("AIR_FILTER").with("state", "PART")))),
                bad(
                        "usage",
                        "an unknown usage",
                        "acknowledgements",
                        (shop, done) -> acknowledgement().with("usage", "MOON")),
                bad(
                        "signedBy",
                        "an acknowledgement of nobody",
                        "acknowledgements",
                        (shop, done) -> acknowledgement().without("signedBy")),
                bad(
                        "effectiveAt",
                        "an arrival of tomorrow",
                        "arrivals",
                        (shop, done) -> Body.empty().at(TOMORROW)),
                bad(
                        "effectiveAt",
                        "a handover of tomorrow",
                        "handoffs",
                        (shop, done) -> Body.empty().at(TOMORROW)));
    }

    private static Arguments partChange(String field, String words, Body body) {
        return bad(field, words, "part-changes", (shop, done) -> body);
    }

    private static Arguments bad(String field, String words, String path, Content content) {
        return arguments(Named.of(words, content), path, field);
    }

    @ParameterizedTest
    @MethodSource("badFacts")
    void areRefusedWithTheirFieldAndChangeNothing(Content content, String path, String field) {
        FinishedCar finished = shop().finishesACar();
        Body body = content.apply(shop(), finished);
        int before = finished.car().history().size();

        shop().as(Role.MANAGER).post(finished.car().path(path), body).isInvalid(field);

        assertThat(finished.car().history()).hasSize(before);
        finished.car().gate().isClear();
    }

    @Test
    void aReadBackThatSaysNothingIsRefused() {
        Car car = shop().finishesACar().car();
        int before = car.history().size();

        shop().as(Role.TECH).post(car.path("read-backs"), Body.empty()).isProblem(400, "invalid");

        assertThat(car.history()).hasSize(before);
    }

    @Test
    void aSignOffWithoutEvidenceNamesTheFailingChecks() {
        Car car = shop().finishesACar().car();
        car.fits(shop().aPartFor("AIR_INTAKE"));
        int before = car.history().size();

        Answer refused = car.asksToClear("FLASHED");

        refused.lacksEvidenceFor("FLASH_AFTER_LAST_CHANGE", "PARTS_COVERED");
        assertThat(car.history()).hasSize(before);
    }

    @Test
    void aSignOffOnNoSuchBasisIsRefused() {
        Car car = shop().finishesACar().car();
        car.fits(shop().aPartFor("AIR_INTAKE"));
        int before = car.history().size();

        car.asksToClear("HOPE").isInvalid("basis");
        shop().as(Role.CALIBRATOR)
                .post("/retune-items/" + car.openItem().id() + "/clearance", Body.empty())
                .isInvalid("basis");

        assertThat(car.history()).hasSize(before);
    }

    @Test
    void strikingOutWhatIsNotThereIsRefused() {
        Car car = shop().finishesACar().car();

        car.asksToStrikeOut(UUID.randomUUID().toString(), Body.of("reason", "gone"))
                .isProblem(404, "not-found");
        car.asksToStrikeOut("seventeen", Body.of("reason", "gone")).isProblem(400, "invalid");
    }
}
