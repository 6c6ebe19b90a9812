package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** docs/drive-log.md, D2. */
class NumbersTest {
    private static final Numbers POINT = new Numbers('.');
    private static final Numbers COMMA = new Numbers(',');

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0|0",
                "12|12",
                "-3.25|-3.25",
                "+4.5|4.5",
                ".5|0.5",
                "-.5|-0.5",
                "12.|12",
                "1e3|1000",
                "-1.5E-2|-0.015",
                "' 7.5 '|7.5",
                "7.5\u00a0|7.5",
                "98.6 %|98.6",
                "1,234|1234",
                "1,234,567.5|1234567.5",
                "1 234|1234",
                "1'234.5|1234.5",
                "\u22125|-5",
                "123456789012345678|123456789012345678",
                "0.1234567890123456789|0.1234567890123456789",
                "9007199254740993|9007199254740992",
                "007.50|7.5"
            })
    void whatIsANumber(String text, double value) {
        assertThat(POINT.parse(text)).isEqualTo(value);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"12,5|12.5", "-0,25|-0.25", "1.234,5|1234.5", "12|12", ",5|0.5", "1,5e2|150"})
    void whatIsANumberWithAComma(String text, double value) {
        assertThat(COMMA.parse(text)).isEqualTo(value);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x",
                "-",
                "+",
                ".",
                "-.",
                "1.2.3",
                "1e",
                "e5",
                "1e+",
                "12 V",
                "NaN",
                "Infinity",
                "1,23",
                "1,2345",
                "12,,3",
                "1e999",
                "--1",
                "0x10",
                "%",
                "1 2",
                "\u0661",
                "1234,567",
                "5,123,45",
                "n/a",
                "1_000",
                "1f",
                "1d"
            })
    void whatIsNone(String text) {
        assertThat(POINT.parse(text)).isEqualTo(Numbers.NONE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\u00a0 ", "\t"})
    void whatIsNothing(String text) {
        assertThat(POINT.parse(text)).isNaN();
    }

    @Test
    void readsWhatTheLanguageReads() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 100_000; i++) {
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(-6, 9));
            String text = String.format(Locale.ROOT, "%." + random.nextInt(12) + "f", value);
            assertThat(POINT.parse(text)).as(text).isEqualTo(Double.parseDouble(text));
            assertThat(COMMA.parse(text.replace('.', ','))).as(text).isEqualTo(Double.parseDouble(text));
            String shortest = Double.toString(value);
            assertThat(POINT.parse(shortest)).as(shortest).isEqualTo(value);
        }
    }

    @Test
    void looksAtItsPieceOfTheBufferAlone() {
        assertThat(POINT.parse("99.512.25".toCharArray(), 4, 2)).isEqualTo(12);
        assertThat(POINT.parse("x".repeat(100))).isEqualTo(Numbers.NONE);
    }
}
