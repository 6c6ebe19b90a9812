package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.bayhold.obd.Service09.Ecu;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules of this reader; where a standard or a capture stands behind one, the test names it. */
class Service09Test {
    private static final String CALID_A = "49 04 01 43 41 4C 41 00 00 00 00 00 00 00 00 00 00 00 00";
    private static final String CALID_B = "49 04 01 43 41 4C 42 00 00 00 00 00 00 00 00 00 00 00 00";
    private static final String CVN = "49 06 01 2D 99 C2 6C";

    @Test
    void oneCalidAndCvnMakeAReading() throws UndecodableException {
        assertThat(Service09.decode(CALID_A + "\n" + CVN).reading()).isEqualTo(new Reading("CALA", "2D99C26C", null));
    }

    @Test
    void severalCalidsAndCvnsAreJoinedInTheirOrder() throws UndecodableException {
        // 13 CCR 1968.2(g)(4.6): in order of importance
        String text =
                "49 04 02 42" + " 00".repeat(15) + " 41" + " 00".repeat(15) + "\n49 06 02 00 00 00 02 00 00 00 01";

        assertThat(Service09.decode(text).reading()).isEqualTo(new Reading("B,A", "00000002,00000001", null));
    }

    @Test
    void theReadingIsThatOfTheLowestId() throws UndecodableException {
        String text = "7E9 " + CALID_B + "\n7E9 49 06 01 00 00 00 09\n7E8 " + CALID_A + "\n7E8 " + CVN;

        assertThat(Service09.decode(text).reading()).isEqualTo(new Reading("CALA", "2D99C26C", null));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "7E8 49 04 01 00", // ends early
                "7E8 10 13 49 04 01 43 41 4C", // its frames are lost
                "7E8 03 7F 09 78", // asked to wait
                "7E8 03 7F 09 12", // refused
                "7E8 49 04 01 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00", // has none
            })
    void anotherEcuNeverStandsInForTheEngines(String engine) throws UndecodableException {
        String text = engine + "\n7E9 " + CALID_B + "\n7E9 " + CVN;

        assertThat(Service09.decode(text).ecus()).extracting(Ecu::id).containsExactly("7E8", "7E9");
        assertThat(Service09.decode(text).reading()).isEqualTo(Reading.NOTHING);
    }

    @Test
    void theSameAnswerTwiceIsOne() throws UndecodableException {
        assertThat(Service09.decode(CALID_A + "\n" + CALID_A + "\n" + CVN + "\n" + CVN)
                        .ecus())
                .containsExactly(new Ecu(null, null, List.of("CALA"), List.of("2D99C26C")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                CALID_A + "\n" + CALID_B,
                "7E8 " + CALID_A + "\n7E8 " + CALID_B,
                CVN + "\n49 06 01 00 00 00 01",
                "49 02 02 41 41 41 41 41 41 41 41 41 41 41 41 41 41 41 41 41"
                        + " 42 42 42 42 42 42 42 42 42 42 42 42 42 42 42 42 42",
            })
    void contradictingAnswersAreRefused(String text) {
        assertFlaw(text, Flaw.CONTRADICTION);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "49 04 0                     | NOT_HEX",
                "CAN 49 06 01 2D 99 C2 6C    | NOT_HEX",
                "0: 49 06 01 2D 99 C2        | NOT_HEX",
                "123 07 49 06 01 2D 99 C2 6C | NOT_HEX",
                "7E8                         | NOT_HEX",
                "18DAF110                    | NOT_HEX",
                "7                           | NOT_HEX",
                "4 90 60                     | NOT_HEX",
                "49 06 01 2D 99 C2           | SHORT_ANSWER",
                "49 06                       | SHORT_ANSWER",
                "49 06 02 2D 99 C2 6C 00     | SHORT_ANSWER",
                "03 7F 09 12                 | REFUSED",
                "7F 09 31                    | REFUSED",
                "7F 09 78                    | NO_ANSWER",
                "04 41 10 03 80              | NO_ANSWER",
                "43 01 01 71                 | NO_ANSWER",
                "09 02                       | NO_ANSWER",
                "49 00 55 40 00 00           | NO_ANSWER",
                "48 6B 09 49 06 01 04 A6 FB 5A 0C | CHECKSUM",
                "48 6B                       | CHECKSUM",
                "49 02 02 50 30 5A 5A        | WRONG_SEQUENCE",
                "49 02 01 00 00 00 57        | UNFINISHED",
            })
    void whatSaysNothingIsRefused(String text, Flaw flaw) {
        assertFlaw(text, flaw);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\n\r\n\t\n"})
    void anEmptyTextHoldsNoAnswer(String text) {
        assertFlaw(text, Flaw.NO_ANSWER);
    }

    @Test
    void theSentenceNamesTheLine() {
        assertThatThrownBy(() -> Service09.decode(CVN + "\n\n4Z"))
                .isInstanceOf(UndecodableException.class)
                .hasMessage("Line 3: " + Flaw.NOT_HEX.sentence());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r", "\r\n"})
    void anyLineEndIsRead(String lineEnd) throws UndecodableException {
        assertThat(Service09.decode(CALID_A + lineEnd + CVN).reading())
                .isEqualTo(new Reading("CALA", "2D99C26C", null));
    }

    @Test
    void unprintableBytesNameNothing() {
        assertFlaw("49 04 01 43 00 41" + " 00".repeat(13), Flaw.UNPRINTABLE);
        assertFlaw("49 02 01" + " FF".repeat(17), Flaw.UNPRINTABLE);
    }

    @Test
    void blanksThatFillUpACalidAreNoPartOfIt() throws UndecodableException {
        // common practice, no source
        assertThat(Service09.decode("49 04 01 43 41 4C 20 41" + " 20".repeat(11))
                        .reading()
                        .calid())
                .isEqualTo("CAL A");
    }

    @Test
    void anEcuNameInTheSameReplyIsReadPast() throws UndecodableException {
        // InfoType 0A, 20 bytes, from memory
        String text = "49 0A 01 45 43 4D" + " 00".repeat(17) + " 06 01 2D 99 C2 6C";

        assertThat(Service09.decode(text).ecus()).containsExactly(new Ecu(null, null, List.of(), List.of("2D99C26C")));
    }

    @Test
    void aLegacyCalidComesInFourMessagesAndAListOfCvnsInOneEach() throws UndecodableException {
        // from memory
        String text = """
                49 04 01 43 41 4C 41
                49 04 02 30 31 00 00
                49 04 03 00 00 00 00
                49 04 04 00 00 00 00
                49 06 01 00 00 00 01
                49 06 02 00 00 00 02
                """;

        assertThat(Service09.decode(text).reading()).isEqualTo(new Reading("CALA01", "00000001,00000002", null));
    }

    @Test
    void aWrongChecksumGivesUpTheWholeList() {
        // the second CVN is damaged: the first alone would be half a list
        String text = "48 6B 09 49 06 01 04 A6 FB 5A 0B\n48 6B 09 49 06 02 04 A6 FB 5A 0B";

        assertFlaw(text, Flaw.CHECKSUM);
    }

    @Test
    void headersOfIso14230AndOfJ1850AreTakenOff() throws UndecodableException {
        // layouts from memory; the check bytes are computed: a sum, and a CRC-8
        assertThat(Service09.decode("87 F1 10 49 06 01 2D 99 C2 6C CC").ecus())
                .containsExactly(new Ecu("10", null, List.of(), List.of("2D99C26C")));
        assertThat(Service09.decode("48 6B 10 49 06 01 2D 99 C2 6C D6").ecus())
                .containsExactly(new Ecu("10", null, List.of(), List.of("2D99C26C")));
    }

    @Test
    void aTextOfExactlyTheBoundsIsRead() throws UndecodableException {
        assertThat(Service09.decode(CVN + "\n".repeat(2_000)).reading().cvn()).isEqualTo("2D99C26C");
        assertThat(Service09.decode(CVN + " ".repeat(65_536 - CVN.length()))
                        .reading()
                        .cvn())
                .isEqualTo("2D99C26C");
    }

    @Test
    void aTextBeyondTheBoundsIsRefused() {
        assertFlaw(CVN + "\n".repeat(2_000) + CVN, Flaw.TOO_LONG);
        assertFlaw(CVN + " ".repeat(65_537 - CVN.length()), Flaw.TOO_LONG);
    }

    private static void assertFlaw(String text, Flaw flaw) {
        assertThatThrownBy(() -> Service09.decode(text))
                .isInstanceOfSatisfying(
                        UndecodableException.class, e -> assertThat(e.flaw()).isEqualTo(flaw));
    }
}
