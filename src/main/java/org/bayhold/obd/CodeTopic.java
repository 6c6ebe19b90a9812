package org.bayhold.obd;

import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the trouble codes speak of that concern mixture, airflow, boost or combustion: a small table of ranges of SAE J2012,
 * which is sold. Meanings come from public code lists where a line says so, otherwise from memory. The first range that holds a code
 * gives its topic.
 */
public enum CodeTopic {
    /** Public code lists. */
    TOO_LEAN("P0171-P0171 P0174-P0174"),
    /** Public code lists. */
    TOO_RICH("P0172-P0172 P0175-P0175"),
    FUEL_TRIM("P0170-P0175"),
    /** Public code lists for P0101 and P0102. */
    AIRFLOW_SENSOR("P0100-P0104"),
    MANIFOLD_PRESSURE("P0105-P0109"),
    INTAKE_AIR_TEMPERATURE("P0110-P0114"),
    /** Public code lists: two sensors of air, or one and the throttle, contradict each other. */
    AIR_SENSORS_DISAGREE("P0068-P0069 P006A-P006A"),
    /** Public code lists for P2279. */
    AIR_LEAK("P2279-P2282"),
    BAROMETRIC_PRESSURE("P2226-P2230"),
    /** Public code lists. */
    OXYGEN_SENSOR_HEATER("P0030-P0032 P0036-P0038 P0042-P0044 P0050-P0064"),
    /** Public code lists for P0040, P0041 and P2270. */
    OXYGEN_SENSOR("P0040-P0041 P0130-P0167 P2195-P2198 P2231-P2256 P2270-P2278"),
    FUEL_COMPOSITION("P0176-P0179"),
    /** Public code lists for P0087 and P0088. */
    FUEL_PRESSURE("P0087-P008B P0190-P0194"),
    INJECTORS("P0200-P0212 P0261-P0296"),
    /** Public code lists. */
    OVERBOOST("P0234-P0234"),
    /** Public code lists. */
    UNDERBOOST("P0299-P0299"),
    BOOST_SENSOR("P0235-P0242"),
    /** Public code lists for P0243. */
    WASTEGATE("P0243-P0250"),
    /** Public code lists for P0033 to P0039 and P0046 to P0049. */
    BOOST_CONTROL("P0033-P0035 P0039-P003B P0045-P0049 P2261-P2263"),
    /** Public code lists for P0300. A misfire is a matter of ignition too; a wrong mixture causes it, and it melts a catalyst. */
    MISFIRE("P0300-P0312"),
    /** Public service manuals. */
    POST_CATALYST_TRIM("P2096-P2099"),
    /** Public service manuals for P2187. */
    TRIM_BY_LOAD("P2177-P2180 P2187-P2194");

    private static final List<Range> ALL = Stream.of(values())
            .flatMap(topic -> Stream.of(topic.ranges.split(" ", -1)).map(written -> Range.of(topic, written)))
            .toList();

    private final String ranges;

    CodeTopic(String ranges) {
        this.ranges = ranges;
    }

    private record Range(CodeTopic topic, int first, int last) {
        static Range of(CodeTopic topic, String written) {
            return new Range(topic, number(written.substring(0, 5)), number(written.substring(6)));
        }
    }

    /** @param code in upper case */
    public static Optional<CodeTopic> of(String code) {
        if (code.charAt(0) != 'P') {
            return Optional.empty();
        }
        int number = number(code);
        return ALL.stream()
                .filter(range -> range.first <= number && number <= range.last)
                .map(Range::topic)
                .findFirst();
    }

    private static int number(String code) {
        return HexFormat.fromHexDigits(code, 1, code.length());
    }
}
