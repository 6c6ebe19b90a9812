package org.bayhold.drives;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.bayhold.drivelog.AirSource;
import org.bayhold.drivelog.AnyDrive;
import org.bayhold.drivelog.Fit;
import org.bayhold.drivelog.Fit.Point;
import org.bayhold.drives.ErrorPicture.Dot;
import org.bayhold.page.Drawn;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** Points and curve stand where their figures are, in the reader's unit. */
class ErrorPictureTest {
    private final long seed = Seed.OF_THIS_RUN;

    @Test
    void allStaysInThePictureWhateverTheFit() {
        for (int n = 0; n < 500; n++) {
            SplittableRandom random = new SplittableRandom(seed + n);
            Fit fit = AnyLog.fit(random);
            Units units = random.nextBoolean() ? Units.METRIC : Units.IMPERIAL;
            String where = Seed.repeats(seed + n);
            ErrorPicture picture = requireNonNull(ErrorPicture.of(fit, 25, units, AnyLog.WORDS));
            assertThat(picture.dots())
                    .as(where)
                    .hasSizeBetween(1, 200)
                    .allMatch(dot -> isInside(dot.x(), dot.y(), picture))
                    .allMatch(dot -> dot.r() >= 1.5 && dot.r() <= 4);
            assertThat(Drawn.places(picture.line() + picture.band()))
                    .as(where)
                    .allMatch(at -> isInside(at.x(), at.y(), picture));
            List<Plot.Label> words = new ArrayList<>();
            Stream.of(picture.more(), picture.less())
                    .filter(limit -> limit != null)
                    .forEach(limit -> words.add(requireNonNull(limit).label()));
            Drawn.assertReadable(words, picture.height(), where);
            Drawn.assertRising(picture.flows(), 1, where);
            Drawn.assertRising(picture.percents(), -1, where);
            assertThat(picture.rows()).as(where).hasSizeBetween(1, 8);
            assertThat(picture.band().isEmpty()).as(where).isEqualTo(Double.isNaN(fit.scaleStandardError()));
        }
    }

    private static boolean isInside(double x, double y, ErrorPicture picture) {
        return x >= picture.left() - 0.1
                && x <= picture.right() + 0.1
                && y >= picture.top() - 0.1
                && y <= picture.bottom() + 0.1;
    }

    /** From the picture back to the figures, by nothing but what stands at its axes. */
    @Test
    void whatIsDrawnReadsAsItWasMeasured() {
        for (Units units : Units.values()) {
            Fit fit = requireNonNull(AnyDrive.complete(seed, 1).fit());
            ErrorPicture picture = requireNonNull(ErrorPicture.of(fit, 25, units, AnyLog.WORDS));
            assertThat(picture.dots()).hasSameSizeAs(fit.points());
            for (int i = 0; i < fit.points().size(); i++) {
                Dot dot = picture.dots().get(i);
                Point point = fit.points().get(i);
                assertThat(flow(picture, dot.x()))
                        .isCloseTo(
                                units.convert(point.flowGPerS(), "g/s"),
                                org.assertj.core.data.Percentage.withPercentage(0.01));
                assertThat(percent(picture, dot.y())).isCloseTo(point.trimPercent(), within(1e-6));
            }
            for (Drawn.At at : Drawn.places(picture.line())) {
                double flow = flow(picture, at.x()) / units.convert(1, "g/s");
                assertThat(percent(picture, at.y())).isCloseTo(fit.at(flow), within(0.06));
            }
            // the band: above it there, below it back
            List<Drawn.At> line = Drawn.places(picture.line());
            List<Drawn.At> band = Drawn.places(picture.band());
            assertThat(band).hasSize(2 * line.size());
            for (int i = 0; i < line.size(); i++) {
                double flow = flow(picture, line.get(i).x()) / units.convert(1, "g/s");
                double two = 2 * Math.hypot(fit.scaleStandardError(), 100 * fit.offsetStandardError() / flow);
                assertThat(percent(picture, band.get(i).y())).isCloseTo(fit.at(flow) + two, within(0.08));
                assertThat(percent(picture, band.get(band.size() - 1 - i).y()))
                        .isCloseTo(fit.at(flow) - two, within(0.08));
            }
        }
    }

    private static double flow(ErrorPicture picture, double x) {
        Plot.Tick one = picture.flows().get(0);
        Plot.Tick other = picture.flows().get(1);
        double first = Double.parseDouble(one.text());
        double second = Double.parseDouble(other.text());
        return first * Math.pow(second / first, (x - one.at()) / (other.at() - one.at()));
    }

    private static double percent(ErrorPicture picture, double y) {
        Plot.Tick one = picture.percents().get(0);
        Plot.Tick other = picture.percents().get(1);
        double first = Double.parseDouble(one.text());
        return first + (Double.parseDouble(other.text()) - first) * (y - one.at()) / (other.at() - one.at());
    }

    @Test
    void thinningKeepsSecondsAndMeans() {
        for (int n = 0; n < 300; n++) {
            List<Point> points = AnyLog.fit(new SplittableRandom(seed + n)).points();
            List<Point> thinned = Thinned.of(points);
            String where = Seed.repeats(seed + n);
            assertThat(thinned).as(where).hasSizeLessThanOrEqualTo(200).isEqualTo(Thinned.of(points));
            double seconds = sum(points, false);
            assertThat(sum(thinned, false)).as(where).isCloseTo(seconds, within(seconds * 1e-9));
            assertThat(sum(thinned, true)).as(where).isCloseTo(sum(points, true), within(seconds * 1e-6));
            List<Point> joined =
                    Thinned.columns(points, 8).stream().map(Thinned::mean).toList();
            assertThat(sum(joined, true)).as(where).isCloseTo(sum(points, true), within(seconds * 1e-6));
        }
    }

    private static double sum(List<Point> points, boolean trims) {
        return points.stream()
                .mapToDouble(point -> point.seconds() * (trims ? point.trimPercent() : 1))
                .sum();
    }

    @Test
    void howFarTheEcuMayCorrectIsDrawnWhereItIsNear() {
        assertThat(requireNonNull(ErrorPicture.of(fit(24), 25, Units.METRIC, AnyLog.WORDS))
                        .more())
                .isNotNull();
        ErrorPicture far = requireNonNull(ErrorPicture.of(fit(3), 25, Units.METRIC, AnyLog.WORDS));
        assertThat(far.more()).isNull();
        assertThat(far.less()).isNull();
        assertThat(far.scale()).isEqualTo("+3.0 ± 0.6\u00a0%");
        assertThat(far.offset()).isEqualTo("−0.10 ± 0.04 g/s");
        assertThat(ErrorPicture.of(null, 25, Units.METRIC, AnyLog.WORDS)).isNull();
    }

    private static Fit fit(double scale) {
        return new Fit(
                scale,
                0.3,
                -0.1,
                0.02,
                AirSource.LOGGED,
                0,
                null,
                List.of(new Point(8, 4, scale - 2.5, 1, 9), new Point(8, 40, scale, 10, 19)));
    }
}
