package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VinsTest {

    /** The first is the sample of 49 CFR 565.15(c), the second an encyclopedia's example, the others variants of them. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "1G4AH59H45G118341",
                "1M8GDM9AXKP042788",
                "11111111111111111",
                "1G4AH59HX5G118344",
                "1G4AH59H25G000000",
                "1G4AH59H15G000005",
                "1M8GDM9A0KP000002"
            })
    void theCheckDigitIsThatOfTheRegulation(String vin) {
        assertThat(Vins.checked(vin)).isEqualTo(vin);
    }
}
