package org.bayhold.drives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import org.bayhold.drivelog.DriveLogs;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.ReadRequest;
import org.bayhold.drivelog.SentLog;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.TrimMap.Cell;
import org.bayhold.page.Units;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pictures of a judged drive agree with the judgement, and stay in their frames. */
class LogPicturesTest {
    private static final Words KEYS = (key, arguments) -> key;

    private static Judgement judged(long seed) throws Exception {
        return DriveLogs.judge(
                new ByteArrayInputStream(seed % 2 == 0 ? SentLog.sound(seed) : SentLog.ofALargerIntake(seed)),
                ReadRequest.PLAIN,
                EngineFacts.UNKNOWN,
                Thresholds.DEFAULTS,
                bytes -> {});
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void theMapHasEveryCellOnceInItsPlace(long seed) throws Exception {
        Judgement judgement = judged(seed);
        TrimMapPicture picture = TrimMapPicture.of(judgement.trims(), Thresholds.DEFAULTS, Units.METRIC, KEYS);

        assertThat(picture).isNotNull();
        assertThat(picture.boxes())
                .extracting(TrimMapPicture.Box::cell)
                .isEqualTo(judgement.trims().cells());
        for (TrimMapPicture.Box box : picture.boxes()) {
            assertThat(box.x()).isBetween(picture.left(), picture.right() - box.width() + 0.01);
            assertThat(box.y()).isBetween(picture.top(), picture.bottom() - box.height() + 0.01);
            Cell cell = box.cell();
            boolean beyond = cell.seconds() >= 10 && Math.abs(cell.worstPercent()) > 10;
            assertThat(box.beyond()).isEqualTo(beyond);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void theErrorIsDrawnWhereItIsAndStaysInTheFrame(long seed) throws Exception {
        Judgement judgement = judged(seed);
        for (Units units : Units.values()) {
            ErrorPicture picture = ErrorPicture.of(judgement.fit(), 25, units, KEYS);

            assertThat(picture).isNotNull();
            assertThat(picture.dots()).hasSizeBetween(8, 200).allSatisfy(dot -> {
                assertThat(dot.x()).isBetween(picture.left(), picture.right());
                assertThat(dot.y()).isBetween((double) picture.top(), (double) picture.bottom());
            });
            assertThat(picture.line()).startsWith("M").doesNotContain("NaN");
            assertThat(picture.rows()).isNotEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyPullStandsInTheTable(long seed) throws Exception {
        Judgement judgement = judged(seed);
        PullPictures picture = PullPictures.of(judgement.pulls(), Thresholds.DEFAULTS, 101.0, Units.METRIC, KEYS);

        assertThat(picture).isNotNull();
        assertThat(picture.rows()).hasSameSizeAs(judgement.pulls());
        assertThat(picture.drawn()).hasSizeLessThanOrEqualTo(PullPictures.DRAWN).isNotEmpty();
        assertThat(Double.parseDouble(picture.rows().get(0).pressure()))
                .isCloseTo(judgement.pulls().get(0).manifoldKpa(), within(0.51));
        picture.drawn()
                .forEach(pull ->
                        pull.panels().forEach(panel -> assertThat(panel.line()).doesNotContain("NaN")));
    }
}
