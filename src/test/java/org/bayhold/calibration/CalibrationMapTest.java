package org.bayhold.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which fuel a map is for, and whether a revision is for an engine that ignites by compression. */
class CalibrationMapTest {
    private static final UUID STREET = new UUID(1, 1);
    private static final UUID RACE = new UUID(1, 2);

    @Test
    void aMapThatNamesNoFuelIsForEvery() {
        CalibrationMap map = new CalibrationMap("1", List.of(), false);
        assertThat(map.isForFuel(STREET, false)).isTrue();
        assertThat(map.isForFuel(null, true)).isTrue();
        assertThat(map.isForFuel(null, false)).isTrue();
    }

    @Test
    void aMapIsForTheFuelsThatItNamesAndNoOther() {
        CalibrationMap map = new CalibrationMap("1", List.of(RACE), false);
        assertThat(map.isForFuel(RACE, false)).isTrue();
        assertThat(map.isForFuel(STREET, false)).isFalse();
        assertThat(map.isForFuel(null, true)).isFalse();
    }

    @Test
    void aMapForTheFactoryFuelAloneIsForNoOther() {
        CalibrationMap map = new CalibrationMap("1", List.of(), true);
        assertThat(map.isForFuel(null, true)).isTrue();
        assertThat(map.isForFuel(STREET, false)).isFalse();
    }

    @Test
    void aMapForCertainFuelsIsNotForOneThatNobodyKnows() {
        assertThat(new CalibrationMap("1", List.of(RACE), true).isForFuel(null, false))
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"street 98", " STREET  98 ", "Street\t98"})
    void aNameIsReadWithoutRegardToCaseAndBlanks(String typed) {
        assertThat(new CalibrationMap("Street 98", List.of(), false).isNamed(typed))
                .isTrue();
    }

    @Test
    void nothingTypedMeansTheMapWithoutAName() {
        assertThat(revision(List.of()).maps()).singleElement().satisfies(map -> {
            assertThat(map.name()).isEmpty();
            assertThat(map.isNamed(null)).isTrue();
            assertThat(map.isNamed(" ")).isTrue();
            assertThat(map.isForFuel(RACE, false)).isTrue();
        });
        CalibrationMap named = new CalibrationMap("1", List.of(), false);
        assertThat(named.isNamed(null)).isFalse();
        assertThat(revision(List.of(named)).maps()).containsExactly(named);
    }

    @Test
    void anEngineIgnitesByCompressionWhereTheRevisionAssumesSo() {
        assertThat(new Assumed(Map.of("ignition", "COMPRESSION"), null).isCompressionIgnition())
                .isTrue();
        assertThat(new Assumed(Map.of("ignition", "SPARK"), null).isCompressionIgnition())
                .isFalse();
        assertThat(Assumed.NOTHING.isCompressionIgnition()).isFalse();
    }

    private static Revision revision(List<CalibrationMap> maps) {
        return new Revision(
                new UUID(2, 2),
                "Calibration",
                "1",
                "HW-1",
                new Reading("CAL", "00000001", null),
                Purpose.NORMAL,
                List.of(),
                maps,
                false,
                Instant.EPOCH,
                null);
    }
}
