package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** docs/drive-log.md, D5. */
class TimesTest {
    private static double parse(Times times, String text) {
        return times.parse(text.toCharArray(), 0, text.length());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.5|12.5",
                "00:00:01|1",
                "01:02:03.5|3723.5",
                "01:02:03,5|3723.5",
                "02:03.25|123.25",
                "5:04:09 PM|61449",
                "12:00:01 AM|1",
                "12:00:01 p.m.|43201",
                "2026-11-25T17:04:09.250Z|61449.25",
                "2026-11-25 17:04:09+01:00|61449",
                "25.11.2026 17:04:09|61449",
                "11/25/2026 5:04:09 PM|61449",
                "100:00:00|360000"
            })
    void whatIsATime(String text, double seconds) {
        assertThat(parse(new Times(new Numbers('.'), 1), text)).isCloseTo(seconds, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                ":",
                "1:",
                ":5",
                "1:99",
                "00:60:00",
                "1:2:3:4",
                "12:00 MM",
                "x12:00",
                "noon",
                "1:00:00.5.5",
                "12:00:00 and then some words that never end"
            })
    void whatIsNone(String text) {
        assertThat(parse(new Times(new Numbers('.'), 1), text)).isEqualTo(Numbers.NONE);
    }

    @Test
    void aClockThatPassesMidnightGoesOn() {
        Times times = new Times(new Numbers('.'), 1);

        assertThat(parse(times, "23:59:59.5")).isEqualTo(86_399.5);
        assertThat(parse(times, "00:00:00.5")).isEqualTo(86_400.5);
        assertThat(parse(times, "00:00:00"))
                .as("a step back is none over midnight")
                .isEqualTo(86_400);
    }

    @Test
    void numbersAreInTheUnitOfTheColumn() {
        assertThat(parse(new Times(new Numbers(','), 1e-3), "1500,5")).isCloseTo(1.5005, within(1e-12));
        assertThat(parse(new Times(new Numbers('.'), 1), " ")).isNaN();
    }
}
