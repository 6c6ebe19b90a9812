package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.bayhold.obd.TextOfFrames.frames;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** ISO 15765-2 as quoted publicly, unless a test names another source. The CVN beside each says that reading went on. */
class IsoTpTest {
    private static final String CVN = "7E8 07 49 06 01 2D 99 C2 6C\n";
    private static final String CALID = "10 13 49 04 01 35 36 30 / 21 32 38 39 34 39 41 43 / 22 00 00 00 00 00 00 31";

    @ParameterizedTest
    @ValueSource(strings = {"00 49 06 01 11 22 33 44", "08 49 06 01 11 22 33 44", "0F 49 06 01 11 22 33 44"})
    void aSingleFrameOfLengthZeroOrAboveSevenIsIgnored(String frame) throws UndecodableException {
        Service09.Answer answer = Service09.decode("7E8 " + frame + "\n" + CVN);

        assertThat(answer.ecus().get(0).cvns()).containsExactly("2D99C26C");
        assertThat(answer.givenUp()).isEmpty();
    }

    @Test
    void aFirstFrameOfALengthBelowEightIsIgnored() throws UndecodableException {
        Service09.Answer answer = Service09.decode("7E8 10 07 49 06 01 11 22 33\n7E8 21 44\n" + CVN);

        assertThat(answer.ecus().get(0).cvns()).containsExactly("2D99C26C");
        assertThat(answer.givenUp()).isEmpty();
    }

    @Test
    void theSequenceNumberWrapsFromFToZero() throws UndecodableException {
        // 8 CALIDs: 3 + 128 = 131 bytes, a first frame and 18 consecutive ones
        List<String> calids =
                IntStream.range(0, 8).mapToObj(i -> "CAL" + i + "000000000001").toList();
        List<String> frames = TextOfFrames.isoTp(TextOfFrames.calidPayload(calids), (byte) 0);

        assertThat(frames).hasSize(19);
        assertThat(frames.get(15)).startsWith("2F");
        assertThat(frames.get(16)).startsWith("20");
        assertThat(frames.get(18)).startsWith("22");
        assertThat(Service09.decode(String.join("\n", frames)).ecus().get(0).calids())
                .isEqualTo(calids);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "10 13 49 04 01 35 36 30 / 22 00 00 00 00 00 00 31", // 21 missing
                "10 13 49 04 01 35 36 30 / 22 00 00 00 00 00 00 31 / 21 32 38 39 34 39 41 43", // out of order
                "10 13 49 04 01 35 36 30 / 21 32 38 39 34 39 41 43 / 21 32 38 39 34 39 41 43", // doubled
                "10 13 49 04 01 35 36 30 / 20 32 38 39 34 39 41 43", // begins at 0
            })
    void aMessageWithAWrongSequenceNumberIsGivenUp(String captured) throws UndecodableException {
        // from memory: given up, never patched
        Service09.Answer answer = Service09.decode(frames("7E8", captured) + CVN);

        assertThat(answer.ecus().get(0).calids()).isEmpty();
        assertThat(answer.ecus().get(0).cvns()).containsExactly("2D99C26C");
        assertThat(answer.givenUp())
                .singleElement()
                .extracting(Service09.GivenUp::flaw)
                .isEqualTo(Flaw.WRONG_SEQUENCE);
        assertThat(answer.reading().calid()).isNull();
    }

    @Test
    void aMessageWhoseLastFrameIsMissingIsGivenUpWhereItBegan() throws UndecodableException {
        Service09.Answer answer =
                Service09.decode(CVN + frames("7E8", "10 13 49 04 01 35 36 30 / 21 32 38 39 34 39 41 43"));

        assertThat(answer.ecus().get(0).calids()).isEmpty();
        assertThat(answer.givenUp()).containsExactly(new Service09.GivenUp(2, Flaw.UNFINISHED));
    }

    @Test
    void aNewFirstFrameGivesUpTheOldMessage() throws UndecodableException {
        // from memory
        Service09.Answer answer =
                Service09.decode(frames("7E8", "10 14 49 02 01 31 47 34 / 21 41 48 35 39 48 34 35 / " + CALID));

        assertThat(answer.ecus().get(0).vin()).isNull();
        assertThat(answer.ecus().get(0).calids()).containsExactly("56028949AC");
        assertThat(answer.givenUp()).containsExactly(new Service09.GivenUp(1, Flaw.UNFINISHED));
    }

    @Test
    void aNewSingleFrameGivesUpTheOldMessage() throws UndecodableException {
        // from memory
        Service09.Answer answer = Service09.decode(frames("7E8", "10 13 49 04 01 35 36 30")
                + CVN
                + frames("7E8", "21 32 38 39 34 39 41 43 / 22 00 00 00 00 00 00 31"));

        assertThat(answer.ecus().get(0).calids()).isEmpty();
        assertThat(answer.ecus().get(0).cvns()).containsExactly("2D99C26C");
        assertThat(answer.givenUp()).containsExactly(new Service09.GivenUp(1, Flaw.UNFINISHED));
    }

    @Test
    void aMessageReadAgainAfterALossCounts() throws UndecodableException {
        Service09.Answer answer = Service09.decode(
                frames("7E8", "10 13 49 04 01 35 36 30 / 22 00 00 00 00 00 00 31") + frames("7E8", CALID));

        assertThat(answer.ecus().get(0).calids()).containsExactly("56028949AC");
        assertThat(answer.givenUp()).containsExactly(new Service09.GivenUp(2, Flaw.WRONG_SEQUENCE));
    }

    @Test
    void requestsAndFlowControlInTheTextArePassedOver() throws UndecodableException {
        // ids: 7DF in public examples, 7E0 from memory; flow control as in the socketcan-isotp documentation
        String text = """
                7DF 02 09 04 00 00 00 00 00
                7E8 10 13 49 04 01 35 36 30
                7E0 30 00 00 00 00 00 00 00
                7E8 30 00 00
                7E8 21 32 38 39 34 39 41 43
                7E8 22 00 00 00 00 00 00 31
                """;

        assertThat(Service09.decode(text).ecus())
                .containsExactly(new Service09.Ecu("7E8", null, List.of("56028949AC"), List.of()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "07 49 06 01 2D 99 C2", // a single frame without its last byte
                "10 13 49 04 01 35 36", // a first frame of 7 bytes
                "10 13 49 04 01 35 36 30 / 21 32 38 39 34 39 41", // a consecutive frame of 7 bytes in the middle
            })
    void aFrameThatEndsTooEarlyGivesTheMessageUp(String captured) {
        assertThatThrownBy(() -> Service09.decode(frames("7E8", captured)))
                .isInstanceOfSatisfying(
                        UndecodableException.class, e -> assertThat(e.flaw()).isEqualTo(Flaw.SHORT_FRAME));
    }

    @Test
    void theLastFrameNeedsNoPadding() throws UndecodableException {
        assertThat(Service09.decode("10 0B 49 06 02 42 32 42\n21 41 33 45 36 46")
                        .ecus()
                        .get(0)
                        .cvns())
                .containsExactly("42324241", "33453646");
    }

    @Test
    void aFrameOfNineBytesIsNoClassicFrame() {
        assertThatThrownBy(() -> Service09.decode(CVN + "7E8 21 00 00 00 00 00 00 00 00"))
                .hasMessageStartingWith("Line 2: ")
                .isInstanceOfSatisfying(
                        UndecodableException.class, e -> assertThat(e.flaw()).isEqualTo(Flaw.LONG_FRAME));
    }
}
