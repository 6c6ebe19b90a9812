package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;
import static org.bayhold.catalog.Category.ECU;
import static org.bayhold.catalog.Category.FUEL;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;

/** What was flashed, other ECUs, and fuel: docs/rules.md, rules 1, 2 and 12. */
class FoldEcuTest {
    private static final UUID STANDALONE = part("standalone ECU");
    private static final UUID E85 = part("E85");
    private static final Reading AS_MADE = new Reading("CAL-0", "00000000", null);
    private static final Revision STREET = aRevision("street").made();
    private static final Revision ETHANOL =
            aRevision("ethanol").covering(FUEL, E85).made();
    private static final String MORNING = "2026-03-01T08:00:00Z";
    private static final String NOON = "2026-03-01T12:00:00Z";

    @Test
    void theLastFlashIsWhatRuns() {
        CarState car =
                aCar().flashedWith(ETHANOL).flashedWith(STREET).at(NOON).made().state();

        assertThat(car.revision()).contains(STREET);
        assertThat(car.flashedAt()).contains(Instant.parse(NOON));
        assertThat(car.expectedReading()).contains(STREET.reading());
        assertThat(car.neverFlashed()).isFalse();
        assertThat(((InEcu.Flashed) car.inEcu()).flashedBy()).isEqualTo(CarFixture.CALIBRATOR);
    }

    @Test
    void aFlashRecordedLateDoesNotOverwriteALaterOne() {
        MadeCar car = aCar().flashedWith(STREET)
                .at(NOON)
                .flashedWith(ETHANOL)
                .at(MORNING)
                .made();

        assertThat(car.state().revision()).contains(STREET);
        assertThat(car.stateAt(MORNING).revision()).contains(ETHANOL);
    }

    @Test
    void aFailedFlashIsTheLastFlash() {
        CarState car = aCar().flashedWith(STREET)
                .failedToFlash(ETHANOL)
                .at(NOON)
                .made()
                .state();

        assertThat(car.inEcu()).isInstanceOfSatisfying(InEcu.Failed.class, failed -> {
            assertThat(failed.attempted()).isEqualTo(ETHANOL);
            assertThat(failed.at()).isEqualTo(NOON);
        });
        assertThat(car.revision()).isEmpty();
    }

    @Test
    void aDealersUpdateIsNotOurs() {
        CarState car =
                aCar().flashedWith(STREET).flashedByOthers().at(NOON).made().state();

        assertThat(car.inEcu()).isInstanceOf(InEcu.NotOurs.class);
        assertThat(car.flashedAt()).contains(Instant.parse(NOON));
        assertThat(car.revision()).isEmpty();
        assertThat(car.expectedReading()).isEmpty();
    }

    @Test
    void whatWasFlashedBeforeAnotherEcuCountsNoMore() {
        CarState car =
                aCar().flashedWith(STREET).fittedEcu(STANDALONE, "HW-2").made().state();

        assertThat(car.inEcu()).isEqualTo(new InEcu.Unknown());
        assertThat(car.ecuHardware()).isEqualTo("HW-2");
        assertThat(car.neverFlashed()).isFalse();
    }

    @Test
    void anotherEcuWithoutANumberKeepsTheNumber() {
        CarFixture car = aCar().fittedEcu(STANDALONE, "HW-2").fittedEcu(STANDALONE, null);

        assertThat(car.made().state().ecuHardware()).isEqualTo("HW-2");
        assertThat(car.removed(ECU).made().state().ecuHardware()).isEqualTo("HW-2");
    }

    @Test
    void theFactoryEcuPutBackOnANeverFlashedCarRunsItsFactoryCalibration() {
        CarState car = aCar().registeredWith(AS_MADE)
                .fittedEcu(STANDALONE, "HW-2")
                .putBackToStock(ECU)
                .made()
                .state();

        assertThat(car.inEcu()).isEqualTo(new InEcu.Factory(AS_MADE));
        assertThat(car.ecuHardware()).isEqualTo(CarFixture.ECU_HARDWARE);
        assertThat(car.changes()).hasSize(2);
    }

    @Test
    void theFactoryEcuPutBackAfterAFlashRunsNobodyKnowsWhat() {
        CarState car = aCar().flashedWith(STREET).putBackToStock(ECU).made().state();

        assertThat(car.inEcu()).isEqualTo(new InEcu.Unknown());
    }

    @Test
    void anAdjustedEcuIsAChangeAndTheSameEcu() {
        CarState car = aCar().flashedWith(STREET).adjusted(ECU).made().state();

        assertThat(car.revision()).contains(STREET);
        assertThat(car.changes()).hasSize(1);
    }

    @Test
    void anInspectionThatFindsAnotherEcuMakesWhatWasFlashedCountNoMore() {
        CarFixture car = aCar().flashedWith(STREET).found(ECU, Fitted.FACTORY);
        assertThat(car.made().state().revision()).as("it confirms").contains(STREET);

        assertThat(car.found(ECU, Fitted.part(STANDALONE)).made().state().inEcu())
                .isEqualTo(new InEcu.Unknown());
    }

    @Test
    void aFuelThatTheFlashedRevisionNamesIsNoChange() {
        CarState car = aCar().flashedWith(ETHANOL)
                .fitted(FUEL, E85)
                .asReported()
                .at(NOON)
                .made()
                .state();

        assertThat(car.changes()).isEmpty();
        assertThat(car.lines()).extracting(BuildLine::fitted).contains(Fitted.part(E85));
    }

    @Test
    void anyOtherFuelIsAChange() {
        assertThat(aCar().flashedWith(STREET).fitted(FUEL, E85).made().state().changes())
                .hasSize(1);
        assertThat(aCar().flashedWith(ETHANOL)
                        .putBackToStock(FUEL)
                        .made()
                        .state()
                        .changes())
                .hasSize(1);
        assertThat(aCar().fitted(FUEL, E85).made().state().changes()).hasSize(1);
    }

    @Test
    void theFactoryFuelIsNoChangeWhereTheCalibrationNamesNone() {
        assertThat(aCar().putBackToStock(FUEL).made().state().changes()).isEmpty();
        assertThat(aCar().flashedWith(STREET)
                        .putBackToStock(FUEL)
                        .made()
                        .state()
                        .changes())
                .isEmpty();
        assertThat(aCar().flashedByOthers().putBackToStock(FUEL).made().state().changes())
                .hasSize(1);
    }
}
