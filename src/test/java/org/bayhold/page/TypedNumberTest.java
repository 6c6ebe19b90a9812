package org.bayhold.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedNumberTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"48300|48300", "48 300|48300", "48,300|48300", "48.300|48300", "1'234'567|1234567", "-5|-5"})
    void aWholeNumberMayHaveMarksBetweenThousands(String typed, int number) {
        assertThat(TypedNumber.whole(typed)).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"48.5", "48,30", "4 83 00", "", "12e3", "99999999999"})
    void whatIsNoWholeNumberIsNotMadeOne(String typed) {
        assertThatThrownBy(() -> TypedNumber.whole(typed)).isInstanceOf(NumberFormatException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"1.5|1.5", "1,5|1.5", "250|250", "1.234|1.234", "-0,25|-0.25"})
    void aFractionStandsAfterAPointOrAComma(String typed, double number) {
        assertThat(TypedNumber.decimal(typed)).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1,234", "1,234.5", "NaN", "Infinity", "1e400", "0x10", ""})
    void whatCouldBeTwoNumbersIsNone(String typed) {
        assertThatThrownBy(() -> TypedNumber.decimal(typed)).isInstanceOf(NumberFormatException.class);
    }
}
