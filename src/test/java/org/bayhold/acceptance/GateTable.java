package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.fitUnidentified;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.refitFactory;
import static org.bayhold.support.Facts.remove;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.Gate;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * {@code docs/rules.md}, "Gate checks", as a table: a situation and what each of the checks says of it. P passes, F
 * fails, - is not required; a dot stands where it may fail or not be required but must not pass, a question mark where the
 * rules do not say.
 */
public abstract class GateTable implements OnADatabase {
    private static final Map<String, List<String>> OUTCOMES = Map.of(
            "P", List.of("PASS"),
            "F", List.of("FAIL"),
            "-", List.of("NOT_REQUIRED"),
            ".", List.of("FAIL", "NOT_REQUIRED"),
            "?", List.of("PASS", "FAIL", "NOT_REQUIRED"));

    /** A car in some situation. */
    @FunctionalInterface
    interface Situation {
        Car in(Shop shop);
    }

    /** The columns in the order of {@link Gate#CHECKS}. */
    static Stream<Arguments> situations() {
        return Stream.of(
                row("P P P - P - - - P -", "a factory car", GateTable::factory),
                row("P P P - P - - - P -", "a factory car with a part without effect", shop -> {
                    Car car = factory(shop);
                    car.fits(shop.aPartFor("COSMETIC"));
                    return car;
                }),
                row(
                        "P F F . F . - - F F",
                        "another intake, nothing flashed",
                        shop -> changed(shop).car()),
                row("P P F - P . - - F .", "the stock intake put back, never flashed", shop -> {
                    Changed changed = changed(shop);
                    changed.car().changes(refitFactory("AIR_INTAKE"));
                    return changed.car();
                }),
                row("P P P P P F - - F F", "flashed", shop -> flashed(shop).car()),
                row(
                        "P P P P P P - - F F",
                        "flashed and read back",
                        shop -> readBack(shop).car()),
                row("P P P P P P - - F P", "flashed, read back and acknowledged", shop -> {
                    Changed changed = readBack(shop);
                    changed.car().acknowledges();
                    return changed.car();
                }),
                row("P P P P P P - - P F", "flashed, read back and signed off", shop -> {
                    Changed changed = readBack(shop);
                    changed.car().clears("FLASHED");
                    return changed.car();
                }),
                row(
                        "P P P P P P - - P P",
                        "finished",
                        shop -> shop.finishesACar().car()),
                row(
                        "P F ? ? ? F - - F P",
                        "finished, then a failed flash",
                        finishedThen((shop, done) -> done.car().flashes(failedFlash(done.calibration())))),
                row(
                        "P P P . F F - - F P",
                        "finished, then a file that is not ours",
                        finishedThen((shop, done) -> done.car().flashes(dealersUpdate()))),
                row(
                        "P P P P F F - - F P",
                        "finished, then a revision for other parts",
                        finishedThen(
                                (shop, done) -> done.car().flashes(shop.issues(RevisionDraft.forThe(done.car()))))),
                row(
                        "P P F P P P - - F P",
                        "finished, then the same part again",
                        finishedThen((shop, done) -> done.car().fits(done.intake()))),
                row(
                        "P P F P F P - - F P",
                        "finished, then another part",
                        finishedThen((shop, done) -> done.car().fits(shop.aPartFor("TURBOCHARGER")))),
                row(
                        "P P F P F P - - F P",
                        "finished, then a part taken off",
                        finishedThen((shop, done) -> done.car().changes(remove("EMISSIONS_EQUIPMENT")))),
                row(
                        "F P F P F P - - F P",
                        "finished, then a part nobody could name",
                        finishedThen((shop, done) -> done.car().changes(fitUnidentified("INJECTORS")))),
                row(
                        "P P P P F P - - F P",
                        "finished, then a late record of another part",
                        finishedThen((shop, done) -> done.car()
                                .changes(fit(shop.aPartFor("TURBOCHARGER")).at(hoursAgo(1))))),
                row(
                        "P P P P P F - - F P",
                        "finished, then an ECU check that differs",
                        finishedThen((shop, done) -> done.car().readsBack(aStrangeReading()))),
                row(
                        "P P P F P P - - ? P",
                        "finished, then the revision withdrawn",
                        finishedThen((shop, done) -> shop.withdraws(done.calibration()))),
                row(
                        "P F F . . . - - F P",
                        "finished, then another ECU",
                        finishedThen((shop, done) ->
                                done.car().changes(refitFactory("ECU").with("ecuHardware", "HW-TABLE")))),
                row(
                        "P P P P P P - - P F",
                        "finished and handed over",
                        finishedThen((shop, done) -> done.car().handsOver())),
                row(
                        "P P P P P P - - P P",
                        "the same part again, signed off as still covered",
                        finishedThen((shop, done) -> {
                            done.car().fits(done.intake());
                            done.car().readsBack(done.calibration());
                            done.car().clears("STILL_COVERED");
                        })),
                row("P P P F P P - - F F", "a revision to reach the dynamometer", shop -> forPurpose(shop, "TRANSFER")),
                row("P P P P P P - - F F", "a revision to run the engine in", shop -> forPurpose(shop, "RUN_IN")),
                row("P P F P P P - - F F", "a flash at the very time of the change", shop -> {
                    Instant time = hoursAgo(2);
                    return dated(shop, time, time, time.plusMillis(1));
                }),
                row("P P P P P F - - F F", "an ECU check at the very time of the flash", shop -> {
                    Instant time = hoursAgo(2);
                    return dated(shop, hoursAgo(3), time, time);
                }),
                row(
                        "P P P P P F - - F F",
                        "an ECU check older than policy allows",
                        shop -> dated(shop, hoursAgo(30), hoursAgo(29), hoursAgo(28))),
                row("F F ? . F . - - F .", "a car of unknown history", shop -> shop.registers(aCarOfUnknownHistory())),
                row("P F ? . F . - - F .", "a car of unknown history, inspected", shop -> {
                    Car car = shop.registers(aCarOfUnknownHistory());
                    car.isInspectedThroughout(shop.aPartFor("AIR_INTAKE"));
                    return car;
                }),
                row("F P P P F P - - F F", "a car of unknown history, flashed and read back", shop -> {
                    Car car = shop.registers(aCarOfUnknownHistory());
                    Calibration calibration = shop.issues(RevisionDraft.forThe(car));
                    car.flashes(calibration);
                    car.readsBack(calibration);
                    return car;
                }));
    }

    @Test
    void aReadBackIsNotRequiredWherePolicyDoesNotAskForIt() {
        Car car = flashed(shop()).car();
        shop().whilePolicySays(
                        "readBackRequired",
                        false,
                        () -> assertThat(car.gate().outcome("READ_BACK_MATCHES"))
                                .isEqualTo("NOT_REQUIRED"));
        assertThat(car.gate().outcome("READ_BACK_MATCHES")).isEqualTo("FAIL");
    }

    @Test
    void anOlderReadBackCountsWherePolicyAllowsIt() {
        Car car = dated(shop(), hoursAgo(30), hoursAgo(29), hoursAgo(28));
        shop().whilePolicySays(
                        "readBackMaxAgeHours",
                        48,
                        () -> assertThat(car.gate().outcome("READ_BACK_MATCHES"))
                                .isEqualTo("PASS"));
        assertThat(car.gate().outcome("READ_BACK_MATCHES")).isEqualTo("FAIL");
    }

    @Test
    void anAcknowledgementIsNotRequiredWherePolicyDoesNotAskForIt() {
        Car car = flashed(shop()).car();
        shop().whilePolicySays(
                        "acknowledgementRequired",
                        false,
                        () -> assertThat(car.gate().outcome("CUSTOMER_ACKNOWLEDGED"))
                                .isEqualTo("NOT_REQUIRED"));
        assertThat(car.gate().outcome("CUSTOMER_ACKNOWLEDGED")).isEqualTo("FAIL");
    }

    @ParameterizedTest
    @MethodSource("situations")
    void eachCheckSaysOfItsOwn(String words, Situation situation, String expected) {
        Gate gate = situation.in(shop()).gate().isWhole();

        Iterator<String> column = List.of(expected.split(" ")).iterator();
        for (String check : Gate.CHECKS) {
            assertThat(OUTCOMES.get(column.next()))
                    .as("%s of %s in %s", check, words, gate)
                    .contains(gate.outcome(check));
        }
    }

    /** What happens to a finished car. */
    @FunctionalInterface
    interface Event {
        void happens(Shop shop, FinishedCar finished);
    }

    private record Changed(Car car, Part intake, Calibration calibration) {}

    private static Arguments row(String outcomes, String words, Situation situation) {
        return arguments(words, situation, outcomes);
    }

    private static Situation finishedThen(Event event) {
        return shop -> {
            FinishedCar finished = shop.finishesACar();
            event.happens(shop, finished);
            return finished.car();
        };
    }

    private static Car factory(Shop shop) {
        return shop.registers(aCar());
    }

    private static Changed changed(Shop shop) {
        Car car = factory(shop);
        Part intake = shop.aPartFor("AIR_INTAKE");
        car.fits(intake);
        return new Changed(car, intake, shop.issues(RevisionDraft.forThe(car).covers(intake)));
    }

    private static Changed flashed(Shop shop) {
        Changed changed = changed(shop);
        changed.car().flashes(changed.calibration());
        return changed;
    }

    private static Changed readBack(Shop shop) {
        Changed flashed = flashed(shop);
        flashed.car().readsBack(flashed.calibration());
        return flashed;
    }

    private static Car forPurpose(Shop shop, String purpose) {
        Changed changed = changed(shop);
        Calibration calibration = shop.issues(
                RevisionDraft.forThe(changed.car()).covers(changed.intake()).with("purpose", purpose));
        changed.car().flashes(calibration);
        changed.car().readsBack(calibration);
        return changed.car();
    }

    private static Car dated(Shop shop, Instant change, Instant flash, Instant readBack) {
        Car car = factory(shop);
        Part intake = shop.aPartFor("AIR_INTAKE");
        Calibration calibration = shop.issues(RevisionDraft.forThe(car).covers(intake));
        car.changes(fit(intake).at(change));
        car.flashes(flash(calibration).at(flash));
        car.readsBack(calibration.reading().at(readBack));
        return car;
    }
}
