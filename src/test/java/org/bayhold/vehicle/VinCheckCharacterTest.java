package org.bayhold.vehicle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 49 CFR 565.15(c), Tables III to V. */
class VinCheckCharacterTest {
    private static final String SAMPLE = "1G4AH59H45G118341";

    @Test
    void theRegulationsSampleComputesToFour() {
        // 49 CFR 565.15(c): 411 / 11 = 37, remainder 4
        assertThat(CheckCharacter.weightedSum(SAMPLE)).isEqualTo(411);
        assertThat(CheckCharacter.of(SAMPLE)).isEqualTo('4');
    }

    @Test
    void theEncyclopediaExampleHasItsPublishedProducts() {
        String vin = "1M8GDM9AXKP042788";

        assertThat(IntStream.range(0, 17).map(i -> CheckCharacter.product(vin, i)))
                .containsExactly(8, 28, 48, 35, 16, 12, 18, 10, 0, 18, 56, 0, 24, 10, 28, 24, 16);
    }

    /** Those that compute first, then those that do not; the source of each stands in VinTest. */
    @ParameterizedTest
    @CsvSource({
        "1G4AH59H45G118341, 411, 4",
        "1M8GDM9AXKP042788, 351, X",
        "11111111111111111, 89, 1",
        "1G4AH59HX5G118344, 417, X",
        "5GZCZ43D13S812715, 408, 1",
        "1G4AH59H25G000000, 332, 2",
        "1G4AH59H15G000005, 342, 1",
        "1M8GDM9A0KP000002, 253, 0",
        "1G4AH59H55G118341, 411, 4",
        "5GZCZ43D23S812715, 408, 1",
        "11111111211111111, 89, 1",
        "1M8GDM9AXKP042787, 349, 8",
        "1G4AH59H45G118342, 413, 6",
        "1M8GDM9AXPK042788, 356, 4",
        "1G4AH95H45G118341, 415, 8",
        "WP0ZZZ99ZTS392124, 459, 8",
    })
    void theSumModuloElevenGivesTheCheckCharacter(String vin, int sum, char check) {
        assertThat(CheckCharacter.weightedSum(vin)).isEqualTo(sum);
        assertThat(CheckCharacter.of(vin)).isEqualTo(check);
    }

    @Test
    void of544SingleChangesOnlyTheThirtyNineOfEqualValuePass() {
        // 11 is prime and no weight but that of position 9 is 0 modulo 11: a change of value always shows
        int changes = 0;
        int passed = 0;
        for (int i = 0; i < SAMPLE.length(); i++) {
            for (char c : CheckCharacter.ALPHABET.toCharArray()) {
                String changed = SAMPLE.substring(0, i) + c + SAMPLE.substring(i + 1);
                if (changed.equals(SAMPLE)) {
                    continue;
                }
                changes++;
                if (CheckCharacter.computes(changed)) {
                    passed++;
                    assertThat(i).isNotEqualTo(CheckCharacter.INDEX);
                    assertThat(CheckCharacter.product(changed, i)).isEqualTo(CheckCharacter.product(SAMPLE, i));
                }
            }
        }
        assertThat(changes).isEqualTo(544);
        assertThat(passed).isEqualTo(39);
    }

    @Test
    void everySwapOfUnequalNeighboursInTheSampleShows() {
        int swaps = 0;
        for (int i = 0; i + 1 < SAMPLE.length(); i++) {
            if (SAMPLE.charAt(i) == SAMPLE.charAt(i + 1)) {
                continue;
            }
            swaps++;
            String swapped = SAMPLE.substring(0, i) + SAMPLE.charAt(i + 1) + SAMPLE.charAt(i) + SAMPLE.substring(i + 2);
            assertThat(CheckCharacter.computes(swapped)).as(swapped).isFalse();
        }
        assertThat(swaps).isEqualTo(15);
    }

    @Test
    void aRandomVinPassesOnceInElevenTimes() {
        SplittableRandom random = new SplittableRandom(565);
        int passed = 0;
        for (int n = 0; n < 110_000; n++) {
            StringBuilder vin = new StringBuilder();
            for (int i = 0; i < 17; i++) {
                vin.append(CheckCharacter.ALPHABET.charAt(random.nextInt(33)));
            }
            vin.setCharAt(CheckCharacter.INDEX, "0123456789X".charAt(random.nextInt(11)));
            passed += CheckCharacter.computes(vin.toString()) ? 1 : 0;
        }
        // five standard deviations
        assertThat(passed).isCloseTo(10_000, Offset.offset(480));
    }
}
