package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.obd.TextOfFrames.frames;

import java.util.List;
import java.util.Optional;
import org.bayhold.obd.Readiness.Monitor;
import org.bayhold.obd.Readiness.State;
import org.bayhold.obd.TroubleCode.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Services 03, 07, 0A and PID 01 of service 01; where something stands behind a case, it is named beside it. */
class TroubleCodesTest {
    private static final String IDENTITY =
            "49 04 01 43 41 4C 41 00 00 00 00 00 00 00 00 00 00 00 00\n49 06 01 2D 99 C2 6C\n";

    private static List<String> codes(String text) throws UndecodableException {
        return EcuAnswers.decode(text).codes().stream().map(TroubleCode::code).toList();
    }

    private static void assertFlaw(String text, Flaw flaw, int line) {
        assertThatThrownBy(() -> EcuAnswers.decode(text)).isInstanceOfSatisfying(UndecodableException.class, e -> {
            assertThat(e.flaw()).isEqualTo(flaw);
            assertThat(e.line()).isEqualTo(line);
        });
    }

    /** Bytes of public code lists; C, B and U from the tests of python-OBD and obd-java-api. */
    @ParameterizedTest
    @CsvSource({
        "P0101, 01 01", "P0102, 01 02", "P0171, 01 71", "P0172, 01 72", "P0174, 01 74", "P0299, 02 99",
        "P0104, 01 04", "B0003, 80 03", "C0123, 41 23", "C1104, 51 04", "B21AB, A1 AB", "U3106, F1 06"
    })
    void twoBytesAreOneCode(String code, String bytes) throws UndecodableException {
        assertThat(codes("43 01 " + bytes)).containsExactly(code);
        assertThat(codes("7E8 04 43 01 " + bytes + " AA AA AA")).containsExactly(code);
    }

    /** Tests of obd-java-api: no count, three codes a message, filled up with zeros. */
    @Test
    void theBusesBeforeCanSendNoCount() throws UndecodableException {
        assertThat(codes("43 00 03 51 04 A1 AB\n43 F1 06 00 00 00 00"))
                .containsExactly("B21AB", "C1104", "P0003", "U3106");
        assertThat(codes("43000000000000")).isEmpty();
    }

    /** Codes from the tests of scapy. */
    @Test
    void canSendsACount() throws UndecodableException {
        assertThat(codes("7E8 43 03 13 01 45 10 97 82")).containsExactly("B1782", "C0510", "P1301");
        assertThat(codes(frames("7E8", "10 08 43 03 13 01 45 10 / 21 97 82 00 00 00 00 00")))
                .containsExactly("B1782", "C0510", "P1301");
        assertThat(codes(frames("18DAF110", "10 08 43 03 13 01 45 10 / 21 97 82 55 55 55 55 55")))
                .containsExactly("B1782", "C0510", "P1301");
    }

    /** Tests of python-OBD: 00 00 is padding. */
    @Test
    void zerosAreNoCode() throws UndecodableException {
        assertThat(codes("43 02 01 04 00 00")).containsExactly("P0104");
        assertThat(codes("7E8 43 00 00 00 00 00")).isEmpty();
    }

    @Test
    void eachServiceHasItsKind() throws UndecodableException {
        EcuAnswers answers = EcuAnswers.decode("7E8 02 43 00\n7E8 04 47 01 01 71\n7E8 04 4A 01 04 20");

        assertThat(answers.told()).containsExactlyInAnyOrder(Kind.values());
        assertThat(answers.codes())
                .containsExactly(
                        new TroubleCode("P0171", Kind.PENDING, true), new TroubleCode("P0420", Kind.PERMANENT, false));
        assertThat(EcuAnswers.decode("47 00").told()).containsExactly(Kind.PENDING);
    }

    @Test
    void everyEcuIsHeardAndTheEnginesSoftwareIsRead() throws UndecodableException {
        String text = "7E9 49 04 01 43 41 4C 42 00 00 00 00 00 00 00 00 00 00 00 00\n7E9 49 06 01 00 00 00 09\n"
                + IDENTITY.replaceAll("(?m)^49", "7E8 49")
                + "7E9 10 08 43 03 07 00 07 05\n7E8 04 43 01 01 71 00 00 00\n7E9 21 07 10 00 00 00 00 00";

        EcuAnswers answers = EcuAnswers.decode(text);

        assertThat(answers.reading()).isEqualTo(new Reading("CALA", "2D99C26C", null));
        assertThat(answers.codes()).extracting(TroubleCode::code).containsExactly("P0171", "P0700", "P0705", "P0710");
    }

    /** An engine that told its codes alone must not make way for another ECU's software. */
    @Test
    void anEcuThatToldOnlyItsCodesIsThereAllTheSame() throws UndecodableException {
        String text = "7E8 02 43 00\n" + IDENTITY.replaceAll("(?m)^49", "7E9 49");

        assertThat(EcuAnswers.decode(text).reading()).isEqualTo(Reading.NOTHING);
        assertThat(EcuAnswers.decode("43 00\n" + IDENTITY.replaceAll("(?m)^49", "7E9 49"))
                        .reading()
                        .calid())
                .isEqualTo("CALA");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "7E8 43 02 01 71                                      | SHORT_ANSWER   | 1",
                "43 01 71                                             | SHORT_ANSWER   | 1",
                "43                                                   | SHORT_ANSWER   | 1",
                "7E8 03 43 01 01                                      | SHORT_ANSWER   | 1",
                "7E8 06 43 01 01 71 02 99                             | CODE_COUNT     | 1",
                "7E8 04 43 01 01                                      | SHORT_FRAME    | 1",
                "7E8 10 08 43 03 13 01 45 10                          | UNFINISHED     | 1",
                "7E8 10 08 43 03 13 01 45 10;7E8 22 97 82             | WRONG_SEQUENCE | 2",
                "7E9 02 43 00;7E8 21 97 82 00 00 00 00 00             | WRONG_SEQUENCE | 2",
                "48 6B 10 43 01 71 00 00 00 00 00                     | CHECKSUM       | 1",
                "7E8 02 43 00;7E8 04 43 01 01 71                      | CONTRADICTION  | 2",
                "43 00;43 01 01 71                                    | CONTRADICTION  | 2",
                "41 01 00 07 E5                                       | SHORT_ANSWER   | 1",
                "7E8 06 41 01 00 07 E5 00;7E8 06 41 01 00 07 E5 04    | CONTRADICTION  | 2",
                "7E8 03 7F 03 11                                      | REFUSED        | 1",
                "7E8 03 7F 03 78                                      | NO_ANSWER      | 0",
                "7E8 04 41 0D 32 00                                   | NO_ANSWER      | 0",
                "7E8 02 44 00                                         | NO_ANSWER      | 0",
            })
    void whatIsNotWholeIsRefusedWithItsLine(String text, Flaw flaw, int line) {
        assertFlaw(text.replace(";", "\n"), flaw, line);
    }

    /** Half a list of codes would pass for a clean one, however much else is well. */
    @ParameterizedTest
    @ValueSource(strings = {"7E8 10 08 43 03 13 01 45 10", "7E8 04 47 01 01", "7E8 4A 01 04"})
    void aLostListMakesTheWholeUndecodable(String lost) {
        String text = IDENTITY.replaceAll("(?m)^49", "7E8 49") + "7E9 02 43 00\n" + lost;

        assertThatThrownBy(() -> EcuAnswers.decode(text)).isInstanceOf(UndecodableException.class);
    }

    @Test
    void askedAgainTheSameEcuMakesUpForWhatWasLost() throws UndecodableException {
        String again = "10 08 43 03 13 01 45 10\nID 10 08 43 03 13 01 45 10\nID 21 97 82";

        assertThat(codes("7E8 " + again.replace("ID", "7E8"))).hasSize(3);
        assertFlaw(again.replace("ID ", ""), Flaw.UNFINISHED, 1);
    }

    @Test
    void anEcuThatKeepsNoPermanentCodesMayRefuse() throws UndecodableException {
        EcuAnswers answers = EcuAnswers.decode("7E8 03 7F 0A 11\n7E8 03 7F 03 78\n7E8 04 43 01 01 71");

        assertThat(answers.told()).containsExactly(Kind.STORED);
        assertThat(answers.givenUp()).containsExactly(new Service09.GivenUp(1, Flaw.REFUSED));
    }

    @Test
    void aHeaderTellsTheBusAndTheSender() throws UndecodableException {
        assertThat(codes("48 6B 10 43 01 71 01 74 00 00 ED")).containsExactly("P0171", "P0174");
        assertThat(codes("87 F1 10 43 01 71 00 00 00 00 3D")).containsExactly("P0171");
    }

    /** Bits of PID 01 from memory: lamp and three codes; misfire, fuel and components; fuel not complete; C 61, D 20. */
    @Test
    void monitorsOfASparkIgnitionEngine() throws UndecodableException {
        Readiness readiness = EcuAnswers.decode("7E8 06 41 01 83 27 61 20 AA").readiness();

        assertThat(readiness).isNotNull();
        assertThat(readiness.milOn()).isTrue();
        assertThat(readiness.monitors())
                .hasSize(11)
                .contains(
                        new State(Monitor.MISFIRE, true, true),
                        new State(Monitor.FUEL_SYSTEM, true, false),
                        new State(Monitor.COMPONENTS, true, true),
                        new State(Monitor.CATALYST, true, true),
                        new State(Monitor.HEATED_CATALYST, false, false),
                        new State(Monitor.OXYGEN_SENSOR, true, false),
                        new State(Monitor.OXYGEN_SENSOR_HEATER, true, true));
    }

    @Test
    void monitorsOfACompressionIgnitionEngine() throws UndecodableException {
        Readiness readiness = EcuAnswers.decode("41 01 00 0E 6A 08").readiness();

        assertThat(readiness).isNotNull();
        assertThat(readiness.milOn()).isFalse();
        assertThat(readiness.monitors())
                .hasSize(9)
                .contains(
                        new State(Monitor.MISFIRE, false, false),
                        new State(Monitor.BOOST_PRESSURE, true, false),
                        new State(Monitor.NOX_AFTERTREATMENT, true, true),
                        new State(Monitor.PARTICULATE_FILTER, true, true));
    }

    @Test
    void oneEcuThatHasNotFinishedKeepsTheCarFromBeingReady() throws UndecodableException {
        String text = "7E8 06 41 01 00 07 01 00\n7E9 06 41 01 80 44 00 00\n7EA 06 41 01 00 00 01 01";

        Readiness readiness = EcuAnswers.decode(text).readiness();

        assertThat(readiness).isNotNull();
        assertThat(readiness.milOn()).isTrue();
        assertThat(readiness.monitors())
                .contains(
                        new State(Monitor.COMPONENTS, true, false),
                        new State(Monitor.MISFIRE, true, true),
                        new State(Monitor.CATALYST, true, false));
    }

    @ParameterizedTest
    @CsvSource({
        "P0100, AIRFLOW_SENSOR",
        "P0104, AIRFLOW_SENSOR",
        "P0105, MANIFOLD_PRESSURE",
        "P0114, INTAKE_AIR_TEMPERATURE",
        "P0130, OXYGEN_SENSOR",
        "P0167, OXYGEN_SENSOR",
        "P0170, FUEL_TRIM",
        "P0171, TOO_LEAN",
        "P0172, TOO_RICH",
        "P0174, TOO_LEAN",
        "P0175, TOO_RICH",
        "P0201, INJECTORS",
        "P0234, OVERBOOST",
        "P0235, BOOST_SENSOR",
        "P0243, WASTEGATE",
        "P0299, UNDERBOOST",
        "P0300, MISFIRE",
        "P0308, MISFIRE",
        "P2096, POST_CATALYST_TRIM",
        "P2187, TRIM_BY_LOAD",
        "P2196, OXYGEN_SENSOR",
        "P2227, BAROMETRIC_PRESSURE",
        "P008A, FUEL_PRESSURE"
    })
    void whatConcernsMixtureAirflowBoostOrMisfireIsRelated(String code, CodeTopic topic) {
        assertThat(CodeTopic.of(code)).contains(topic);
        assertThat(TroubleCode.of(code, Kind.STORED).related()).isTrue();
        assertThat(TroubleCode.isOfTheStandard(code)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"P0099", "P0115", "P0129", "P0168", "P0180", "P0313", "P0420", "P0700", "C0171", "U0100"})
    void therestIsNot(String code) {
        assertThat(CodeTopic.of(code)).isEqualTo(Optional.empty());
    }

    /** The second digit tells (makers' service manuals). */
    @ParameterizedTest
    @ValueSource(strings = {"P1171", "P3000", "P33FF", "C1104", "B1782", "U3106", "B21AB"})
    void aMakersOwnCodeIsListedAndNotJudged(String code) {
        assertThat(TroubleCode.isOfTheStandard(code)).isFalse();
        assertThat(TroubleCode.of(code, Kind.STORED).related()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "P0171, true",
        "u3fff, true",
        "P0000, false",
        "P4000, false",
        "X0171, false",
        "P017, false",
        "P01711, false"
    })
    void theFormOfACode(String written, boolean isOne) {
        assertThat(written.matches(TroubleCode.FORM)).isEqualTo(isOne);
    }
}
