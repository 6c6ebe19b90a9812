package org.bayhold.drives;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.bayhold.drivelog.AnyDrive;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.LoadAxis;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.TrimMap;
import org.bayhold.drivelog.TrimMap.Cell;
import org.bayhold.drives.TrimMapPicture.Box;
import org.bayhold.drives.TrimMapPicture.Grade;
import org.bayhold.page.Drawn;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** Every cell stands where its engine speed and load are, and says its number where there is room. */
class TrimMapPictureTest {
    private static final Thresholds USUAL = Thresholds.DEFAULTS;

    private final long seed = Seed.OF_THIS_RUN;

    @Test
    void cellsStandWhereTheyBelongWhateverTheMap() {
        for (int n = 0; n < Drawn.ROUNDS; n++) {
            SplittableRandom random = new SplittableRandom(seed + n);
            TrimMap map = AnyLog.map(random);
            Units units = random.nextBoolean() ? Units.METRIC : Units.IMPERIAL;
            TrimMapPicture picture = requireNonNull(TrimMapPicture.of(map, USUAL, units, AnyLog.WORDS));
            String where = Seed.repeats(seed + n);
            double rpm = map.cells().stream().mapToDouble(Cell::rpmFrom).min().orElseThrow();
            double load = map.cells().stream().mapToDouble(Cell::loadFrom).min().orElseThrow();
            assertThat(picture.boxes()).as(where).extracting(Box::cell).isEqualTo(map.cells());
            assertThat(picture.right()).as(where).isLessThanOrEqualTo(Plot.RIGHT + 1e-9);
            for (Box box : picture.boxes()) {
                // from the picture back to the figures
                assertThat(rpm + (picture.bottom() - box.y() - box.height()) / box.height() * 500)
                        .as(where)
                        .isCloseTo(box.cell().rpmFrom(), within(40.0));
                assertThat(load + (box.x() - picture.left()) / box.width() * 10)
                        .as(where)
                        .isCloseTo(box.cell().loadFrom(), within(1e-6));
                assertThat(box.y()).as(where).isGreaterThanOrEqualTo(picture.top() - 1e-9);
                assertThat(box.x() + box.width()).as(where).isLessThanOrEqualTo(picture.right() + 1e-9);
                assertThat(TrimMapPicture.smallWidth(box.text())).as(where).isLessThan(box.width());
                assertThat(box.height()).as(where).isGreaterThanOrEqualTo(14);
                assertText(box, where);
            }
            assertApart(picture.loads(), true, where);
            assertApart(picture.speeds(), false, where);
        }
    }

    /** What is written in a cell is its number, rounded, or its sign. */
    private static void assertText(Box box, String where) {
        String text = box.text().replace('−', '-');
        double worst = box.cell().worstPercent();
        if (box.cell().bank1Percent() == null && box.cell().bank2Percent() == null) {
            assertThat(text).as(where).isEmpty();
        } else if (text.matches("[+-]")) {
            assertThat(worst * (text.equals("+") ? 1 : -1)).as(where).isPositive();
        } else if (!text.isEmpty()) {
            assertThat(Double.parseDouble(text)).as(where).isCloseTo(worst, within(text.contains(".") ? 0.051 : 0.501));
        }
    }

    private static void assertApart(List<Plot.Tick> ticks, boolean across, String where) {
        for (int i = 1; i < ticks.size(); i++) {
            double apart = Math.abs(ticks.get(i).at() - ticks.get(i - 1).at());
            double room = across
                    ? (Plot.width(ticks.get(i).text())
                                    + Plot.width(ticks.get(i - 1).text()))
                            / 2
                    : 13;
            assertThat(apart).as(where).isGreaterThan(room);
        }
    }

    @Test
    void aCellIsGradedAsItIsJudged() {
        assertThat(grades(cell(5, 60), cell(-5.1, 60), cell(10, 60), cell(-10.1, 60), cell(30, 9.9), cell(30, 10)))
                .containsExactly(
                        Grade.NORMAL, Grade.NOTABLE, Grade.NOTABLE, Grade.BEYOND, Grade.TOO_SHORT, Grade.BEYOND);
        Cell unknown = new Cell(1000, 1500, 20, 30, 60, null, null, null, null, 1, 2);
        assertThat(grades(unknown)).containsExactly(Grade.TOO_SHORT);
    }

    /** What the judgement says of its worst cell is said by the picture's. */
    @Test
    void theWorstCellIsThatOfTheJudgement() {
        int seen = 0;
        for (long n = seed; n < seed + 12; n++) {
            Judgement judgement = AnyDrive.judged(n);
            TrimMapPicture picture = TrimMapPicture.of(judgement.trims(), USUAL, Units.METRIC, AnyLog.WORDS);
            Box worst = picture == null ? null : picture.worst();
            if (worst != null) {
                double authority = EngineFacts.USUAL_AUTHORITY_PERCENT;
                double left = (authority - Math.abs(worst.cell().worstPercent())) / authority * 100;
                assertThat(requireNonNull(judgement.headroomPercent()))
                        .as(Seed.repeats(n))
                        .isCloseTo(Math.max(0, left), within(1e-9));
                seen++;
            }
        }
        assertThat(seen).isPositive();
    }

    @Test
    void oneCellIsAPictureAndNoneIsNone() {
        TrimMapPicture picture = requireNonNull(TrimMapPicture.of(
                new TrimMap(LoadAxis.MANIFOLD_PRESSURE, List.of(cell(3, 60))), USUAL, Units.IMPERIAL, AnyLog.WORDS));
        assertThat(picture.boxes()).hasSize(1);
        assertThat(picture.loads()).extracting(Plot.Tick::text).containsExactly("2.9", "4.4");
        assertThat(picture.speeds()).extracting(Plot.Tick::text).containsExactly("1000", "1500");
        assertThat(picture.axis()).isEqualTo("words of drivelog.parameter.MANIFOLD_PRESSURE, psi");
        assertThat(TrimMapPicture.of(new TrimMap(null, List.of()), USUAL, Units.METRIC, AnyLog.WORDS))
                .isNull();
    }

    private static List<Grade> grades(Cell... cells) {
        TrimMap map = new TrimMap(LoadAxis.CALCULATED_LOAD, List.of(cells));
        return requireNonNull(TrimMapPicture.of(map, USUAL, Units.METRIC, AnyLog.WORDS)).boxes().stream()
                .map(Box::grade)
                .toList();
    }

    private static Cell cell(double percent, double seconds) {
        return new Cell(1000, 1500, 20, 30, seconds, percent, 1.0, null, null, 1, 2);
    }
}
