package org.bayhold.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VinTest {
    private static final String SAMPLE = "1G4AH59H45G118341";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1G4AH59H45G118341", // 49 CFR 565.15(c), the regulation's own sample
                "1M8GDM9AXKP042788", // encyclopedia example
                "11111111111111111", // public numerical test library
                "1G4AH59HX5G118344", // variant of the sample
                "5GZCZ43D13S812715", // public test vector, barcode library
                "1G4AH59H25G000000", // variant of the sample
                "1G4AH59H15G000005", // variant of the sample
                "1M8GDM9A0KP000002", // variant of the encyclopedia example
            })
    void aVinThatComputesStandsWithoutWarning(String vin) {
        assertThat(Vin.parse(vin)).isEqualTo(new Vin.Valid(new Vin(vin), List.of()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1G4AH59H55G118341", // position 9 changed in the sample
                "5GZCZ43D23S812715", // public test vector, barcode library, which expects 1
                "11111111211111111", // own change
                "1M8GDM9AXKP042787", // own change of the last digit
                "1G4AH59H45G118342", // own change of the last digit
                "1M8GDM9AXPK042788", // own swap of positions 10 and 11
                "1G4AH95H45G118341", // own swap of positions 6 and 7
            })
    void inNorthAmericaAWrongCheckCharacterIsRefused(String vin) {
        assertThat(Vin.parse(vin)).isEqualTo(new Vin.Invalid(Vin.Reason.CHECK_CHARACTER));
    }

    /** 49 CFR 565 for 1, 4 and 5; CMVSS 115 for 2, that clause from memory; GB 16735 for L, from memory. */
    @ParameterizedTest
    @ValueSource(chars = {'1', '2', '3', '4', '5', 'L'})
    void aWrongCheckCharacterIsRefusedWhereTheLawDemandsOne(char region) {
        String rest = SAMPLE.substring(1);
        char right = CheckCharacter.of(region + rest);
        char wrong = right == '0' ? '1' : '0';

        assertThat(Vin.parse(region + withPosition9(rest, right))).isInstanceOf(Vin.Valid.class);
        assertThat(Vin.parse(region + withPosition9(rest, wrong)))
                .isEqualTo(new Vin.Invalid(Vin.Reason.CHECK_CHARACTER));
    }

    @Test
    void aEuropeanVinWithZInPosition9StandsAndIsSaidToHaveNoCheckCharacter() {
        // public test vector, obd-java-api: Z can never be a check character
        assertThat(Vin.parse("WP0ZZZ99ZTS392124"))
                .isEqualTo(new Vin.Valid(new Vin("WP0ZZZ99ZTS392124"), List.of(Vin.Warning.NO_CHECK_CHARACTER)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"WP0ZZZ997TS392124", "WP0ZZZ99XTS392124"})
    void aEuropeanVinWithAnotherCheckCharacterIsOnlyDoubted(String vin) {
        // the vector above computes to 8
        assertThat(Vin.parse(vin))
                .isEqualTo(new Vin.Valid(new Vin(vin), List.of(Vin.Warning.CHECK_CHARACTER_DOES_NOT_COMPUTE)));
    }

    @Test
    void aEuropeanVinWithTheRightCheckCharacterIsNotDoubted() {
        assertThat(Vin.parse("WP0ZZZ998TS392124")).isEqualTo(new Vin.Valid(new Vin("WP0ZZZ998TS392124"), List.of()));
    }

    /** ISO 3779; 49 CFR 565.13(g). */
    @ParameterizedTest
    @CsvSource({
        "1G4AH59H45G11834, LENGTH",
        "1G4AH59H45G1183411, LENGTH",
        "'', LENGTH",
        "1G4AH59H45GI18341, CHARACTER",
        "1M8GDM9AXKPO42788, CHARACTER",
        "1M8GDM9AXKPQ42788, CHARACTER",
        "1G4AH59H45G-18341, CHARACTER",
        "1G4AH59H45G 18341, CHARACTER",
    })
    void anotherFormIsRefused(String typed, Vin.Reason reason) {
        assertThat(Vin.parse(typed)).isEqualTo(new Vin.Invalid(reason));
    }

    @Test
    void blanksAroundAndLowerCaseAreForgiven() {
        assertThat(Vin.parse("\t1g4ah59h45g118341 \n")).isEqualTo(Vin.parse(SAMPLE));
    }

    @Test
    void foreignLettersThatFoldToLatinOnesAreRefused() {
        // long s would become S in upper case, sharp s two of them
        assertThat(Vin.parse("1G4AH59H45G11834\u017F")).isEqualTo(new Vin.Invalid(Vin.Reason.CHARACTER));
        assertThat(Vin.parse("1G4AH59H45G1183\u00DF")).isEqualTo(new Vin.Invalid(Vin.Reason.LENGTH));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1g4ah59h45g118341", " 1G4AH59H45G118341", "1G4AH59H55G118341", "1G4AH59H45GI18341", ""})
    void noVinComesToBeThatParseWouldRefuse(String value) {
        assertThatThrownBy(() -> new Vin(value)).isInstanceOf(IllegalArgumentException.class);
    }

    /** 49 CFR 565.15(d), Table VII and its note; the first three agree with the government decoder. */
    @ParameterizedTest
    @CsvSource({
        "6, H, 1987",
        "2, 3, 2003",
        "E, D, 2013",
        "1, A, 1980",
        "K, A, 2010",
        "1, 1, 2001",
        "Z, 1, 2031",
        "9, 5, 2005"
    })
    void theModelYearOfALightVehicleFollowsFromPositions7And10(char position7, char position10, int year) {
        assertThat(european(position7, position10).modelYearOfLightVehicle()).hasValue(year);
    }

    @Test
    void aHeavyTruckMayBeOfEitherYear() {
        // government decoder: this one, class 6, is of 2000, where the rule of position 7 would say 2030
        assertThat(european('B', 'Y').possibleModelYears()).containsExactly(2000, 2030);
    }

    @ParameterizedTest
    @ValueSource(chars = {'U', 'Z', '0'})
    void someCharactersAreNoYearCode(char position10) {
        Vin vin = european('1', position10);

        assertThat(vin.possibleModelYears()).isEmpty();
        assertThat(vin.modelYearOfLightVehicle()).isEqualTo(OptionalInt.empty());
    }

    private static String withPosition9(String withoutPosition1, char c) {
        return withoutPosition1.substring(0, 7) + c + withoutPosition1.substring(8);
    }

    /** Of a region where position 9 is free, so that only the positions in question vary. */
    private static Vin european(char position7, char position10) {
        return new Vin("WP0ZZZ" + position7 + "9Z" + position10 + "S392124");
    }
}
