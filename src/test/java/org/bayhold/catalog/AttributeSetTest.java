package org.bayhold.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.bayhold.refusal.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class AttributeSetTest {
    private static final AttributeSet INTAKE = PartAttributes.of(Category.AIR_INTAKE);

    @ParameterizedTest
    @ValueSource(strings = {"sensorBoreMM", "sensor_bore_mm", "sensorBorMm", "SensorBoreMm", "sensorBore"})
    void aMisspeltNameIsRefusedWithTheOneThatIsMeant(String name) {
        assertThat(keys(refusal(Map.of(name, 80)))).containsExactly("attributes.misspelt");
        assertThat(refusal(Map.of(name, 80)).reasons().get(0).arguments())
                .containsExactly(name, "sensorBoreMm", "20 mm … 200 mm");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-80, 0, 19.999, 200.001, 1e300, Double.NaN, Double.POSITIVE_INFINITY})
    void aFigureBeyondItsRangeIsRefused(double bore) {
        assertThat(keys(refusal(Map.of("sensorBoreMm", bore)))).containsExactly("attributes.range");
    }

    @Test
    void everyReasonIsGivenAtOnce() {
        assertThat(refusal(Map.of("sensorBoreMm", 0, "flowCcPerMin", 440, "note", " "))
                        .reasons())
                .extracting(Refusal.Reason::field)
                .containsExactlyInAnyOrder("at.sensorBoreMm", "at.flowCcPerMin", "at.note");
    }

    @Test
    void aStrangeNameIsANoteWhereNotesAreTaken() {
        assertThatCode(() -> INTAKE.holdKnown("at", Map.of("fuel", "98"))).doesNotThrowAnyException();
    }

    /** The refusal of a strange name lists all names: many strangers would be answered with hundreds of times their size. */
    @Test
    void anAnswerDoesNotOutgrowItsRequest() {
        Map<String, Object> strangers = new HashMap<>();
        IntStream.range(0, 100_000).forEach(i -> strangers.put("stranger" + i, i));

        assertThat(keys(refusal(strangers))).containsExactly("attributes.too-many");
        assertThat(keys(refusal(Map.of("x".repeat(1_000_000), 1)))).containsExactly("attributes.name");
        assertThat(keys(refusal(Map.of(" ", 1)))).containsExactly("attributes.name");
    }

    @ParameterizedTest
    @EnumSource(Category.class)
    void aLetterThatIsLeftOutPointsToTheNameItIsMissingIn(Category category) {
        AttributeSet set = PartAttributes.of(category);
        for (Attribute attribute : set.attributes()) {
            String name = attribute.name();
            for (int i = 0; i < name.length(); i++) {
                assertThat(set.meantBy(name.substring(0, i) + name.substring(i + 1)))
                        .contains(attribute);
            }
        }
    }

    private static Refusal refusal(Map<String, Object> values) {
        return catchThrowableOfType(Refusal.class, () -> INTAKE.holdAll("at", values));
    }

    private static List<String> keys(Refusal refusal) {
        return refusal.reasons().stream().map(Refusal.Reason::key).toList();
    }
}
