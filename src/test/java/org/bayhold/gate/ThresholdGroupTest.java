package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.page.Units;
import org.junit.jupiter.api.Test;

/** docs/drive-log.md, D16. */
class ThresholdGroupTest {
    private static final List<Attribute> ALL = ThresholdGroup.ALL.attributes();

    private final CanonicalJson json = new CanonicalJson();

    @Test
    void everyThresholdIsThereOnce() {
        assertThat(ALL.stream().map(Attribute::name))
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(Thresholds.class.getRecordComponents())
                        .map(RecordComponent::getName)
                        .toList());
    }

    @Test
    void theDefaultsAreAllowed() {
        assertThat(ThresholdLine.of(ALL, Thresholds.DEFAULTS, Thresholds.DEFAULTS, json))
                .allSatisfy(line -> {
                    assertThat(line.threshold().problem(line.field(), line.now()))
                            .isEmpty();
                    assertThat(line.differs()).isFalse();
                });
    }

    /** The table of the text is the list of the code. */
    @Test
    void theTextGivesTheSameDefaultsAndBounds() throws IOException {
        List<String> rows = Files.readAllLines(Path.of("docs/drive-log.md")).stream()
                .dropWhile(line -> !line.startsWith("## D16"))
                .filter(line -> line.startsWith("| `"))
                .toList();

        assertThat(rows)
                .containsExactlyElementsOf(
                        ThresholdLine.of(ALL, Thresholds.DEFAULTS, Thresholds.DEFAULTS, json).stream()
                                .map(ThresholdGroupTest::row)
                                .toList());
    }

    private static String row(ThresholdLine line) {
        if (line.threshold() instanceof NumberAttribute number) {
            return "| `" + line.name() + "` | " + number.unit() + " | " + line.typed() + " | " + plain(number.least())
                    + " | " + plain(number.most()) + " |";
        }
        return "| `" + line.name() + "` | – | " + line.now() + " | – | – |";
    }

    private static String plain(double bound) {
        return Units.plain(bound, 3);
    }
}
