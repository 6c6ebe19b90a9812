package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.obd.TextOfFrames.frames;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bayhold.obd.Service09.Ecu;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Answers captured or published, each with where it comes from. */
class Service09CaptureTest {
    private static final String CALID = "10 13 49 04 01 35 36 30 / 21 32 38 39 34 39 41 43 / 22 00 00 00 00 00 00 31";

    static Stream<Arguments> captures() {
        return Stream.of(
                capture(
                        "VIN: built from the sample of 49 CFR 565.15(c); obd-java-api reads the same",
                        "10 14 49 02 01 31 47 34 / 21 41 48 35 39 48 34 35 / 22 47 31 31 38 33 34 31",
                        vin("1G4AH59H45G118341")),
                capture(
                        "European VIN: public test vector, obd-java-api",
                        "10 14 49 02 01 57 50 30 / 21 5A 5A 5A 39 39 5A 54 / 22 53 33 39 32 31 32 34",
                        vin("WP0ZZZ99ZTS392124")),
                capture(
                        "CALID whose 20th byte is cut: data sheet of an OBD interpreter IC",
                        CALID,
                        calids("56028949AC")),
                capture(
                        "CALID without padding: built, invented number",
                        "10 13 49 04 01 49 4E 56 / 21 30 54 45 53 54 36 35 / 22 34 36 41 42 43 44 00",
                        calids("INV0TEST6546ABCD")),
                capture(
                        "CALID all zeros, the ECU has none: public capture",
                        "10 13 49 04 01 00 00 00 / 21 00 00 00 00 00 00 00 / 22 00 00 00 00 00 00 00",
                        calids()),
                capture(
                        "two CALIDs: layout from scapy OBD tests",
                        "10 23 49 04 02 43 41 4C / 21 41 30 30 30 30 30 30 / 22 30 30 30 30 30 31 43 / "
                                + "23 41 4C 42 30 30 30 30 / 24 30 30 30 30 30 30 30 / 25 32 00 00 00 00 00 00",
                        calids("CALA000000000001", "CALB000000000002")),
                capture("CVN: public capture", "07 49 06 01 2D 99 C2 6C", cvns("2D99C26C")),
                capture(
                        "two CVNs: public capture",
                        "10 0B 49 06 02 42 32 42 / 21 41 33 45 36 46",
                        cvns("42324241", "33453646")),
                capture(
                        "two waits, then the answer: built, the rule from scapy OBD tests",
                        "03 7F 09 78 / 03 7F 09 78 / 10 0B 49 06 02 DE AD BE / 21 EF 00 00 00 01",
                        cvns("DEADBEEF", "00000001")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("captures")
    void framesWithIdsOf11BitAreRead(String source, String captured, Ecu expected) throws UndecodableException {
        assertThat(Service09.decode(frames("7E8", captured)).ecus()).containsExactly(expected);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("captures")
    void framesWithIdsOf29BitAreRead(String source, String captured, Ecu expected) throws UndecodableException {
        assertThat(Service09.decode(frames("18DAF110", captured)).ecus()).containsExactly(of("18DAF110", expected));
        assertThat(Service09.decode(frames("18 DA F1 10", captured)).ecus()).containsExactly(of("18DAF110", expected));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("captures")
    void framesWithoutIdsAreRead(String source, String captured, Ecu expected) throws UndecodableException {
        assertThat(Service09.decode(frames("", captured)).ecus()).containsExactly(of(null, expected));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("captures")
    void lowerCaseWithoutBlanksReadsTheSame(String source, String captured, Ecu expected) throws UndecodableException {
        String text = frames("7E8", captured).replace(" ", "").toLowerCase(Locale.ROOT);

        assertThat(Service09.decode(text).ecus()).containsExactly(expected);
    }

    @Test
    void interleavedFramesOfTwoEcusAreSortedById() throws UndecodableException {
        // data sheet of an OBD interpreter IC
        String text = """
                7E9 10 13 49 04 01 35 36 30
                7E8 10 13 49 04 01 35 36 30
                7E8 21 32 38 39 34 39 41 43
                7E9 21 32 38 39 35 34 41 43
                7E8 22 00 00 00 00 00 00 31
                7E9 22 00 00 00 00 00 00 00
                """;

        assertThat(Service09.decode(text).ecus())
                .containsExactly(
                        new Ecu("7E8", null, List.of("56028949AC"), List.of()),
                        new Ecu("7E9", null, List.of("56028954AC"), List.of()));
    }

    @Test
    void aVinOfALegacyBusComesInFiveNumberedMessages() throws UndecodableException {
        // obd-java-api tests
        String text = """
                49 02 01 00 00 00 57
                49 02 02 50 30 5A 5A
                49 02 03 5A 39 39 5A
                49 02 04 54 53 33 39
                49 02 05 32 31 32 34
                """;

        assertThat(Service09.decode(text).ecus()).containsExactly(of(null, vin("WP0ZZZ99ZTS392124")));
    }

    @Test
    void aCvnOfALegacyBusWithHeaderAndChecksumIsRead() throws UndecodableException {
        // public capture, ISO 9141: the sum of the bytes before, modulo 256, is 0B
        assertThat(Service09.decode("48 6B 09 49 06 01 04 A6 FB 5A 0B").ecus())
                .containsExactly(of("09", cvns("04A6FB5A")));
    }

    @Test
    void bothInfoTypesOfOneReplyAreRead() throws UndecodableException {
        // layout from scapy OBD tests; the values are the sample of 49 CFR 565.15(c) and an invented number
        String text = "49 02 01 31 47 34 41 48 35 39 48 34 35 47 31 31 38 33 34 31"
                + " 04 01 49 4E 56 30 54 45 53 54 36 35 34 36 41 42 43 44";

        assertThat(Service09.decode(text).ecus())
                .containsExactly(new Ecu(null, "1G4AH59H45G118341", List.of("INV0TEST6546ABCD"), List.of()));
    }

    private static Arguments capture(String source, String captured, Ecu expected) {
        return Arguments.of(source, captured, expected);
    }

    private static Ecu vin(String vin) {
        return new Ecu("7E8", vin, List.of(), List.of());
    }

    private static Ecu calids(String... calids) {
        return new Ecu("7E8", null, List.of(calids), List.of());
    }

    private static Ecu cvns(String... cvns) {
        return new Ecu("7E8", null, List.of(), List.of(cvns));
    }

    private static Ecu of(@Nullable String id, Ecu ecu) {
        return new Ecu(id, ecu.vin(), ecu.calids(), ecu.cvns());
    }
}
