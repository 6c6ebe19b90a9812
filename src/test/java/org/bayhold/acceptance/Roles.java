package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;
import static org.bayhold.support.Facts.acknowledgement;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.foundFactory;
import static org.bayhold.support.Facts.inspection;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.remove;
import static org.bayhold.support.Facts.voiding;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** {@code docs/rules.md}, "Who may do what". On one database only: it is decided before any is asked. */
public abstract class Roles implements OnADatabase {

    /** Something that somebody does to a car that is ready for it. */
    record Act(Preparation preparation, BiFunction<Api, Ready, Answer> deed) {}

    /** A car that is ready for an act, and what the act is about. */
    record Ready(Car car, Calibration calibration, String about, String etag) {}

    @FunctionalInterface
    interface Preparation {
        Ready in(Shop shop);
    }

    static Stream<Arguments> acts() {
        return Stream.of(
                act("WTCM", "registers a car", (api, ready) -> api.post("/vehicles", aCar())),
                act(
                        "WTCM",
                        "changes a car's plate",
                        (api, ready) ->
                                api.withIfMatch(ready.etag).patch(ready.car.path(""), Body.of("plate", "B-CHANGED"))),
                act("WTCM", "records an arrival", (api, ready) -> api.post(ready.car.path("arrivals"), Body.empty())),
                act(
                        "WTCM",
                        "records a part change",
                        (api, ready) -> api.post(ready.car.path("part-changes"), remove("AIR_FILTER"))),
                act(
                        "WTCM",
                        "records an inspection",
                        (api, ready) -> api.post(
                                ready.car.path("inspections"), inspection(List.of(foundFactory("AIR_FILTER"))))),
                act(
                        "WTCM",
                        "records an acknowledgement",
                        (api, ready) -> api.post(ready.car.path("acknowledgements"), acknowledgement())),
                act(
                        "WTCM",
                        "plans a retune",
                        Roles::toBeSignedOff,
                        (api, ready) -> api.withIfMatch(ready.etag)
                                .patch("/retune-items/" + ready.about, Body.of("note", "waits for a gasket"))),
                act("WTCM", "catalogues a part", (api, ready) -> api.post("/part-specs", aPart("AIR_INTAKE"))),
                act(
                        "CM",
                        "corrects a part",
                        (api, ready) -> api.post(
                                "/part-specs/" + ready.about + "/corrections",
                                Body.of("attributes", Body.of("sensorBoreMm", 80))
                                        .with("reason", "a wrong sheet"))),
                act(
                        "TCM",
                        "records a flash",
                        (api, ready) -> api.post(ready.car.path("flashes"), flash(ready.calibration))),
                act(
                        "TCM",
                        "records an ECU check",
                        (api, ready) -> api.post(ready.car.path("read-backs"), ready.calibration.reading())),
                act(
                        "CM",
                        "issues a revision",
                        (api, ready) -> api.post(
                                "/calibrations", RevisionDraft.forThe(ready.car).toSend())),
                act(
                        "CM",
                        "withdraws a revision",
                        (api, ready) -> api.post(
                                "/calibrations/" + ready.calibration.id() + "/withdrawal",
                                Body.of("reason", "it knocks"))),
                act(
                        "CM",
                        "signs a retune off",
                        Roles::toBeSignedOff,
                        (api, ready) ->
                                api.post("/retune-items/" + ready.about + "/clearance", Body.of("basis", "FLASHED"))),
                act("WM", "hands a car over", (api, ready) -> api.post(ready.car.path("handoffs"), Body.empty())),
                act(
                        "M",
                        "releases a car on HOLD",
                        Roles::toBeSignedOff,
                        (api, ready) -> api.post(ready.car.path("handoffs"), leavingWith(exception()))),
                act(
                        "M",
                        "strikes a record out",
                        Roles::withAWrongRecord,
                        (api, ready) -> api.post("/records/" + ready.about + "/voiding", voiding())),
                act(
                        "M",
                        "sets the policy",
                        (api, ready) -> api.put("/policy", Body.of("acknowledgementRequired", true))),
                read("a car", (api, ready) -> api.get(ready.car.path(""))),
                read("the list of cars", (api, ready) -> api.get("/vehicles?vin=" + ready.car.vin())),
                read("a gate", (api, ready) -> api.get(ready.car.path("gate"))),
                read("a build sheet", (api, ready) -> api.get(ready.car.path("build-sheet"))),
                read("a history", (api, ready) -> api.get(ready.car.path("history"))),
                read("a car's retunes", (api, ready) -> api.get(ready.car.path("retune-items"))),
                read("all open retunes", (api, ready) -> api.get("/retune-items?status=OPEN")),
                read("handovers", (api, ready) -> api.get(ready.car.path("handoffs"))),
                read("the catalogue", (api, ready) -> api.get("/part-specs?category=AIR_INTAKE")),
                read("the policy", (api, ready) -> api.get("/policy")));
    }

    @ParameterizedTest
    @MethodSource("acts")
    void theTableSaysWho(Act act, Set<Role> allowed) {
        Ready forAll = act.preparation.in(shop());
        int before = forAll.car.history().size();
        for (Role role : EnumSet.complementOf(EnumSet.copyOf(allowed))) {
            act.deed.apply(shop().as(role), forAll).isProblem(403, "forbidden");
        }
        assertThat(forAll.car.history()).hasSize(before);
        for (Role role : allowed) {
            Answer answer = act.deed.apply(shop().as(role), act.preparation.in(shop()));
            assertThat(answer.status()).as("%s: %s", role, answer).isIn(200, 201, 204);
        }
    }

    @ParameterizedTest
    @MethodSource("acts")
    void nobodyDoesAnythingUnknown(Act act, Set<Role> allowed) {
        Ready ready = act.preparation.in(shop());
        int before = ready.car.history().size();

        act.deed.apply(shop().anonymous(), ready).isProblem(401, "unauthenticated");
        act.deed.apply(shop().anonymous().withToken("made-up"), ready).isProblem(401, "unauthenticated");

        assertThat(allowed).isNotEmpty();
        assertThat(ready.car.history()).hasSize(before);
    }

    @ParameterizedTest
    @EnumSource(names = {"WRITER", "CALIBRATOR", "MANAGER"})
    void contactDataIsForThoseWhoCall(Role role) {
        Car car = shop().finishesACar().car();
        assertThat(shop().as(role).get(car.path("")).is(200).text()).contains("+1 555 0142", "ines@customer.example");
    }

    @ParameterizedTest
    @EnumSource(names = {"TECH", "AUDITOR"})
    void andForNobodyElse(Role role) {
        Car car = shop().finishesACar().car();
        for (String path : List.of(car.path(""), "/vehicles?vin=" + car.vin(), car.path("history"))) {
            assertThat(shop().as(role).get(path).is(200).text()).doesNotContain("+1 555 0142", "ines@customer.example");
        }
    }

    private static Arguments act(String who, String words, BiFunction<Api, Ready, Answer> deed) {
        return act(who, words, Roles::finished, deed);
    }

    private static Arguments read(String words, BiFunction<Api, Ready, Answer> deed) {
        return act("WTCMA", "reads " + words, deed);
    }

    private static Arguments act(
            String who, String words, Preparation preparation, BiFunction<Api, Ready, Answer> deed) {
        Set<Role> allowed = EnumSet.noneOf(Role.class);
        for (Role role : Role.values()) {
            // A is the auditor; the administrator, S, has no say over cars
            if (role != Role.ADMIN && who.indexOf(role.name().charAt(0)) >= 0) {
                allowed.add(role);
            }
        }
        return arguments(Named.of(words, new Act(preparation, deed)), allowed);
    }

    private static Ready finished(Shop shop) {
        FinishedCar finished = shop.finishesACar();
        return ready(
                shop, finished.car(), finished.calibration(), finished.intake().id());
    }

    private static Ready toBeSignedOff(Shop shop) {
        FinishedCar finished = shop.finishesACar();
        Car car = finished.car();
        car.fits(finished.intake());
        car.flashes(finished.calibration());
        car.readsBack(finished.calibration());
        String item = car.openItem().id();
        String etag = shop.as(Role.WRITER).get("/retune-items/" + item).is(200).etag();
        return new Ready(car, finished.calibration(), item, etag);
    }

    private static Ready withAWrongRecord(Shop shop) {
        FinishedCar finished = shop.finishesACar();
        Answer wrong = finished.car().changes(fit(finished.intake()));
        return ready(shop, finished.car(), finished.calibration(), wrong.id());
    }

    private static Ready ready(Shop shop, Car car, Calibration calibration, String about) {
        String etag = shop.as(Role.WRITER).get(car.path("")).is(200).etag();
        return new Ready(car, calibration, about, etag);
    }
}
