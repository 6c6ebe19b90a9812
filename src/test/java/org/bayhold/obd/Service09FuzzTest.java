package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.List;
import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** Whatever is pasted, the answer is an answer or an UndecodableException. */
class Service09FuzzTest {
    private static final int INPUTS = 200_000;

    private static final List<String> SOUND = List.of(
            "7E8 10 14 49 02 01 31 47 34\n7E8 21 41 48 35 39 48 34 35\n7E8 22 47 31 31 38 33 34 31\n",
            "7E8 10 13 49 04 01 35 36 30\n7E9 10 13 49 04 01 35 36 30\n7E8 21 32 38 39 34 39 41 43\n"
                    + "7E9 21 32 38 39 35 34 41 43\n7E8 22 00 00 00 00 00 00 31\n7E9 22 00 00 00 00 00 00 00\n",
            "18DAF110 10 0B 49 06 02 42 32 42\n18DAF110 21 41 33 45 36 46\n",
            "49 02 01 00 00 00 57\n49 02 02 50 30 5A 5A\n49 02 03 5A 39 39 5A\n49 02 04 54 53 33 39\n49 02 05 32 31 32 34\n",
            "48 6B 09 49 06 01 04 A6 FB 5A 0B\n",
            "037f0978\r\n100b490602deadbe\r\n21ef00000001\r\n",
            "49 02 01 31 47 34 41 48 35 39 48 34 35 47 31 31 38 33 34 31 04 01 49 4E 56 30 54 45 53 54 36 35 34 36 41 42 43 44\n");

    private static final List<String> PIECES = List.of(
            "7E8",
            "7E9",
            "7DF",
            "18DAF110",
            "18DB33F1",
            "49",
            "02",
            "04",
            "06",
            "0A",
            "01",
            "00",
            "FF",
            "10 14",
            "10",
            "21",
            "22",
            "20",
            "30",
            "7F 09 78",
            "7F 09",
            "48 6B",
            "87 F1",
            " ",
            "\n",
            "\r",
            "\t",
            "4",
            "x",
            "\u0000",
            "\u0661",
            "\uD83D",
            "\u00A0",
            "\u2028");

    private final long seed = Seed.OF_THIS_RUN;
    private final OddTexts texts = new OddTexts(new SplittableRandom(seed), SOUND, PIECES, 23);

    @Test
    void noTextMakesTheReaderThrowAnythingElse() {
        int answers = 0;
        for (int n = 0; n < INPUTS; n++) {
            String text = texts.text(n);
            try {
                Service09.Answer answer = Service09.decode(text);
                answers++;
                assertThat(answer.ecus()).isNotEmpty();
                assertThat(answer.reading().fileSha256()).isNull();
            } catch (UndecodableException expected) {
                assertThat(expected.line()).isBetween(0, Service09.MAX_LINES);
            } catch (RuntimeException | StackOverflowError e) {
                fail(Seed.repeats(seed) + ", input " + n + ": " + text, e);
            }
        }
        // else the inputs would be too wild to reach what lies behind the first check
        assertThat(answers).as(Seed.repeats(seed)).isBetween(INPUTS / 20, INPUTS * 19 / 20);
    }
}
