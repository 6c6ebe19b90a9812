package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.buildsheet.CarFixture.aCar;
import static org.bayhold.buildsheet.CarFixture.aCarOfUnknownPast;
import static org.bayhold.buildsheet.CarFixture.part;
import static org.bayhold.buildsheet.RevisionFixture.aRevision;
import static org.bayhold.catalog.Category.AIR_INTAKE;
import static org.bayhold.catalog.Category.ECU;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;

/** What ECU checks tell of a car that nobody flashed: docs/rules.md, rules 9 and 10. */
class FoldReadBackTest {
    private static final UUID STANDALONE = part("standalone ECU");
    private static final Reading AS_MADE = new Reading("CAL-0", "00000000", null);
    private static final Revision STREET = aRevision("street").made();
    private static final Revision OTHER = aRevision("other").made();
    private static final String MORNING = "2026-03-01T08:00:00Z";
    private static final String NOON = "2026-03-01T12:00:00Z";

    @Test
    void theFirstCheckBeforeAnyChangeTellsTheFactoryReading() {
        CarState car = aCar().readBack(AS_MADE)
                .at(MORNING)
                .readBack(STREET)
                .fitted(AIR_INTAKE, part("larger"))
                .at(NOON)
                .made()
                .state();

        assertThat(car.inEcu()).isEqualTo(new InEcu.Factory(AS_MADE));
        assertThat(car.expectedReading()).contains(AS_MADE);
        assertThat(car.readBacks()).hasSize(2);
    }

    @Test
    void whatRegistrationToldIsNotOverwrittenByACheck() {
        CarState car = aCar().registeredWith(AS_MADE).readBack(STREET).made().state();

        assertThat(car.inEcu()).isEqualTo(new InEcu.Factory(AS_MADE));
    }

    @Test
    void aTieCountsAgainstRelease() {
        CarState car = aCar().readBack(AS_MADE)
                .at(NOON)
                .fitted(AIR_INTAKE, part("larger"))
                .at(NOON)
                .made()
                .state();

        assertThat(car.inEcu()).as("the check proves nothing").isEqualTo(new InEcu.Factory(Reading.NOTHING));
        assertThat(car.expectedReading()).isEmpty();
    }

    @Test
    void aCheckAfterAChangeTellsNoFactoryReading() {
        CarFixture car = aCar().fitted(AIR_INTAKE, part("larger"))
                .at(MORNING)
                .readBack(AS_MADE)
                .at(NOON);
        assertThat(car.made().state().inEcu()).isEqualTo(new InEcu.Factory(Reading.NOTHING));

        MadeCar late = aCar().readBack(AS_MADE)
                .at(NOON)
                .fitted(AIR_INTAKE, part("larger"))
                .at(MORNING)
                .made();
        assertThat(late.stateAt(NOON, NOON).expectedReading()).contains(AS_MADE);
        assertThat(late.state().expectedReading()).isEmpty();
    }

    @Test
    void theFactoryReadingComesBackWithTheFactoryEcu() {
        CarFixture car = aCar().readBack(AS_MADE).fittedEcu(STANDALONE, "HW-2").readBack(STREET);

        assertThat(car.putBackToStock(ECU).made().state().inEcu()).isEqualTo(new InEcu.Factory(AS_MADE));
    }

    @Test
    void aCheckOfAnotherEcuTellsNoFactoryReadingEvenWhereAnEcuHasNoEffect() {
        CarState car = aCar().moved(ECU, true, "2026-01-05T08:30:00Z")
                .fittedEcu(STANDALONE, "HW-2")
                .readBack(STREET)
                .putBackToStock(ECU)
                .made()
                .state();

        assertThat(car.changes()).isEmpty();
        assertThat(car.inEcu()).isEqualTo(new InEcu.Factory(Reading.NOTHING));
    }

    @Test
    void aRevisionIsFoundByACheckOnACarOfUnknownPast() {
        CarFixture car =
                aCarOfUnknownPast().knowing(STREET, OTHER).readBack(STREET).at(NOON);
        CarState found = car.made().state();

        assertThat(found.inEcu()).isEqualTo(new InEcu.Found(STREET, Instant.parse(NOON), car.lastId()));
        assertThat(found.neverFlashed()).isTrue();
        assertThat(car.readBack(OTHER).made().state().revision())
                .as("only differs")
                .contains(STREET);
    }

    @Test
    void noRevisionIsFoundOnAFactoryCar() {
        CarState car = aCar().knowing(STREET).readBack(STREET).made().state();

        assertThat(car.revision()).isEmpty();
    }

    @Test
    void noRevisionIsFoundOnceTheCarWasFlashed() {
        CarState car = aCarOfUnknownPast()
                .knowing(STREET)
                .flashedByOthers()
                .readBack(STREET)
                .made()
                .state();

        assertThat(car.inEcu()).isInstanceOf(InEcu.NotOurs.class);
    }

    @Test
    void noRevisionIsFoundThatIsForAnotherEcu() {
        CarFixture car =
                aCarOfUnknownPast().knowing(aRevision("theirs").forEcu("HW-2").made());

        assertThat(car.readBack(aRevision("theirs").made()).made().state().inEcu())
                .isEqualTo(new InEcu.Unknown());
        assertThat(car.fittedEcu(STANDALONE, "HW-2")
                        .readBack(aRevision("theirs").made())
                        .made()
                        .state()
                        .inEcu())
                .isInstanceOf(InEcu.Found.class);
    }

    @Test
    void noRevisionIsFoundThatWasWithdrawnOrIssuedLater() {
        Revision withdrawn = aRevision("old").withdrawnAt(NOON).made();
        Revision issued = aRevision("new").issuedAt(NOON).made();

        assertThat(aCarOfUnknownPast()
                        .knowing(withdrawn)
                        .readBack(withdrawn)
                        .at(NOON)
                        .made()
                        .state()
                        .revision())
                .isEmpty();
        assertThat(aCarOfUnknownPast()
                        .knowing(withdrawn)
                        .readBack(withdrawn)
                        .at(MORNING)
                        .made()
                        .state()
                        .revision())
                .contains(withdrawn);
        assertThat(aCarOfUnknownPast()
                        .knowing(issued)
                        .readBack(issued)
                        .at(MORNING)
                        .made()
                        .state()
                        .revision())
                .isEmpty();
        assertThat(aCarOfUnknownPast()
                        .knowing(issued)
                        .readBack(issued)
                        .at(NOON)
                        .made()
                        .state()
                        .revision())
                .contains(issued);
    }

    @Test
    void ofTwoThatLookTheSameTheFirstIssuedIsFound() {
        Revision later =
                aRevision("copy").reporting(STREET.reading()).issuedAt(MORNING).made();

        CarState car = aCarOfUnknownPast()
                .knowing(later, STREET)
                .readBack(STREET)
                .at(NOON)
                .made()
                .state();

        assertThat(car.revision()).contains(STREET);
    }
}
