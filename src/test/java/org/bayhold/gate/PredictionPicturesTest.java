package org.bayhold.gate;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.page.Units;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Prediction.Ratios;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sweep.DutyLine;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.bayhold.prediction.Sweep.Named;
import org.bayhold.prediction.Sweep.Point;
import org.bayhold.prediction.Sweep.Spot;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whatever is to be drawn, it stays in the picture, keeps its order, and no word lies over another. */
class PredictionPicturesTest {
    private static final int ROUNDS = 3_000;
    private static final LambdaPicture.Names NAMES =
            new LambdaPicture.Names("idle", "cruise", "peak", "can add no more", "can take no more");
    private static final DutyPicture.Names DUTY =
            new DutyPicture.Names("peak", "85 %: no reserve", "100 %: impossible");
    private static final Pattern PLACE = Pattern.compile("[ML](-?[\\d.]+) (-?[\\d.]+)");

    private final long seed = Long.getLong("pictures.seed", System.nanoTime());
    private SplittableRandom random = new SplittableRandom(seed);

    private record At(double x, double y) {}

    @Test
    void lambdaStaysInItsPictureWhateverItIs() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            MixtureLine line = line();
            Units units = random.nextBoolean() ? Units.METRIC : Units.IMPERIAL;
            LambdaPicture picture = LambdaPicture.of(line, units, NAMES);
            String where = "-Dpictures.seed=" + (seed + n);
            assertThat(places(picture.line() + picture.band()))
                    .as(where)
                    .allMatch(at -> at.x() >= picture.left() - 0.1
                            && at.x() <= picture.right() + 0.1
                            && at.y() >= picture.top() - 0.1
                            && at.y() <= picture.bottom() + 0.1);
            assertThat(Stream.of(picture.one(), ys(picture.leanLimit()), ys(picture.richLimit())))
                    .as(where)
                    .allMatch(y -> y == null || (y >= picture.top() && y <= picture.bottom()));
            assertThat(picture.marks())
                    .as(where)
                    .allMatch(mark -> mark.x() >= picture.left()
                            && mark.x() <= picture.right()
                            && mark.y() >= picture.top()
                            && mark.y() <= picture.bottom());
            List<Plot.Label> words = new ArrayList<>(picture.names());
            Stream.of(picture.leanLimit(), picture.richLimit())
                    .filter(limit -> limit != null)
                    .forEach(limit -> words.add(requireNonNull(limit).label()));
            assertReadable(words, picture.height(), where);
            assertRising(picture.flows(), 1, where);
            assertRising(picture.lambdas(), -1, where);
            // what is not in the picture is said
            double largest = line.points().stream()
                    .mapToDouble(point -> point.mixture().lambda())
                    .max()
                    .orElseThrow();
            assertThat(picture.line().isEmpty() && line.points().size() > 1)
                    .as(where)
                    .isEqualTo(
                            line.points().size() > 1 && places(picture.line()).isEmpty());
            assertThat(picture.above() == null || requireNonNull(picture.above()) >= largest)
                    .as(where)
                    .isTrue();
            assertThat(picture.rows())
                    .as(where)
                    .extracting(LambdaPicture.Row::named)
                    .contains(Named.IDLE, Named.CRUISE);
        }
    }

    /** More lambda is higher up, more air is further right. */
    @Test
    void lambdaKeepsItsOrder() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            MixtureLine line = line();
            LambdaPicture picture = LambdaPicture.of(line, Units.METRIC, NAMES);
            for (LambdaPicture.Mark one : picture.marks()) {
                for (LambdaPicture.Mark other : picture.marks()) {
                    Spot a = spot(line, one.named());
                    Spot b = spot(line, other.named());
                    assertThat(Double.compare(one.x(), other.x()))
                            .as("-Dpictures.seed=%d", seed + n)
                            .isEqualTo(Double.compare(a.flowGPerS(), b.flowGPerS()));
                    assertThat(Double.compare(other.y(), one.y()))
                            .as("-Dpictures.seed=%d", seed + n)
                            .isEqualTo(Double.compare(lambda(a), lambda(b)));
                }
            }
        }
    }

    /** A line that leaves the picture goes on where it comes back, and runs along no edge. */
    @Test
    void aLineThatLeavesThePictureIsBroken() {
        List<Point> points = new ArrayList<>();
        for (double lambda : new double[] {1.0, 5.0, 5.0, 1.0}) {
            points.add(new Point(10.0 * (points.size() + 1), mixture(lambda, null)));
        }
        MixtureLine line =
                new MixtureLine(points, List.of(spot(Named.IDLE, 10, null)), 10, 40, null, null, false, 0.75, 1.25);
        LambdaPicture picture = LambdaPicture.of(line, Units.METRIC, NAMES);
        assertThat(picture.line().chars().filter(c -> c == 'M')).hasSize(2);
        assertThat(places(picture.line())).hasSize(4);
        assertThat(places(picture.line()).get(1).y()).isEqualTo(picture.top());
        assertThat(picture.above()).isEqualTo(5.0);
        assertThat(picture.band()).isEmpty();
    }

    @Test
    void whereATableEndsTheLineEndsAndSoMuchIsHatched() {
        List<Point> points = List.of(
                new Point(10, mixture(1.1, null)),
                new Point(50, mixture(1.2, null)),
                new Point(100, mixture(1.3, null)));
        MixtureLine line =
                new MixtureLine(points, List.of(spot(Named.IDLE, 4, null)), 4, 200, 10.0, 100.0, false, 0.75, 1.25);
        LambdaPicture picture = LambdaPicture.of(line, Units.IMPERIAL, NAMES);
        List<At> drawn = places(picture.line());
        assertThat(drawn.get(0).x()).isCloseTo(requireNonNull(picture.tableBegins()), within());
        assertThat(drawn.get(2).x()).isCloseTo(requireNonNull(picture.tableEnds()), within());
        assertThat(picture.tableEnds()).isLessThan(picture.right());
    }

    @Test
    void contributionsStayInTheirPicture() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            String where = "-Dpictures.seed=" + (seed + n);
            List<Alone> alone = new ArrayList<>();
            for (int i = random.nextInt(1, 7); i > 0; i--) {
                alone.add(new Alone(new Place(Category.INJECTORS, "rail " + i), anyMixture(), null));
            }
            Prediction prediction = prediction(alone, random.nextBoolean() ? anyMixture() : null);
            ContributionPicture picture =
                    requireNonNull(ContributionPicture.of(prediction, Place::toString, "All of them together"));
            assertThat(picture.bars()).as(where).hasSize(alone.size() + (prediction.mixture() == null ? 0 : 1));
            double before = 0;
            for (ContributionPicture.Bar bar : picture.bars()) {
                assertThat(bar.x()).as(where).isBetween((double) picture.left(), (double) picture.right());
                assertThat(bar.x() + bar.width()).as(where).isBetween(bar.x(), picture.right() + 1e-9);
                assertThat(bar.y()).as(where).isGreaterThan(before);
                assertThat(bar.y() + picture.thick()).as(where).isLessThan(picture.bottom());
                before = bar.y() + picture.thick();
                // lean is to the right of nought, rich to the left, and names leave room for the figure
                assertThat(bar.lean() ? bar.x() : bar.x() + bar.width())
                        .as(where)
                        .isCloseTo(picture.zero(), within());
                assertThat(Plot.width(bar.name()) + Plot.width(bar.value()))
                        .as(where)
                        .isLessThan(picture.right() - picture.left());
            }
            assertRising(picture.ticks(), 1, where);
        }
    }

    @Test
    void longerBarsAreLargerCorrections() {
        List<Alone> alone = new ArrayList<>();
        for (double lambda : new double[] {0.8, 0.95, 1.0, 1.1, 1.3}) {
            alone.add(new Alone(new Place(Category.INJECTORS, "rail " + alone.size()), mixture(lambda, null), null));
        }
        ContributionPicture picture = requireNonNull(
                ContributionPicture.of(prediction(alone, null), place -> "Injectors (a word too much)", "all"));
        assertThat(picture.bars())
                .extracting(ContributionPicture.Bar::value)
                .containsExactly("−20.0\u00a0%", "−5.0\u00a0%", "0.0\u00a0%", "+10.0\u00a0%", "+30.0\u00a0%");
        assertThat(picture.bars().get(0).width())
                .isCloseTo(4 * picture.bars().get(1).width(), within());
        assertThat(picture.bars().get(4).width())
                .isCloseTo(3 * picture.bars().get(3).width(), within());
        assertThat(picture.mostMore()).isNotNull();
        assertThat(ContributionPicture.of(prediction(List.of(), null), Place::toString, "all"))
                .isNull();
    }

    @Test
    void dutyStaysInItsPicture() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            String where = "-Dpictures.seed=" + (seed + n);
            DutyLine line = new DutyLine(any(1, 5_000), any(0.01, 5_000), 0.8, 4, 15);
            DutyPicture picture = DutyPicture.of(line, random.nextBoolean() ? Units.METRIC : Units.IMPERIAL, DUTY);
            assertThat(places(picture.line()))
                    .as(where)
                    .isNotEmpty()
                    .allMatch(at -> at.x() >= picture.left()
                            && at.x() <= picture.right()
                            && at.y() >= picture.top()
                            && at.y() <= picture.bottom());
            assertThat(picture.impossible())
                    .as(where)
                    .isLessThan(picture.warning())
                    .isGreaterThan(picture.top());
            assertThat(picture.crossings())
                    .as(where)
                    .hasSize((line.percentAtPeak() > 85 ? 1 : 0) + (line.percentAtPeak() > 100 ? 1 : 0));
            assertReadable(picture.names(), picture.height(), where);
            assertReadable(picture.limits(), picture.height(), where);
            assertRising(picture.flows(), 1, where);
            assertRising(picture.percents(), -1, where);
        }
    }

    private static void assertReadable(List<Plot.Label> labels, double height, String where) {
        for (Plot.Label one : labels) {
            assertThat(one.begins()).as(where).isGreaterThanOrEqualTo(0);
            assertThat(one.ends()).as(where).isLessThanOrEqualTo(Plot.WIDTH);
            assertThat(one.y()).as(where).isBetween(10.0, height);
            for (Plot.Label other : labels) {
                boolean beside = one.ends() <= other.begins() || other.ends() <= one.begins();
                assertThat(one == other || beside || Math.abs(one.y() - other.y()) >= 12)
                        .as("%s over %s, %s", one, other, where)
                        .isTrue();
            }
        }
    }

    private static void assertRising(List<Plot.Tick> ticks, int direction, String where) {
        for (int i = 1; i < ticks.size(); i++) {
            assertThat((ticks.get(i).at() - ticks.get(i - 1).at()) * direction)
                    .as(where)
                    .isGreaterThan(10);
            assertThat(Double.parseDouble(ticks.get(i).text()))
                    .as(where)
                    .isGreaterThan(Double.parseDouble(ticks.get(i - 1).text()));
        }
    }

    /** From next to nothing to far too much, with a table that ends or without. */
    private MixtureLine line() {
        double idle = any(0.1, 100);
        double cruise = any(0.5, 1_000);
        double peak = any(1, 5_000);
        double from = Math.min(idle, Math.min(cruise, peak));
        double to = Math.max(idle, Math.max(cruise, peak));
        boolean ends = random.nextInt(3) == 0;
        double last = ends ? from + (to - from) * random.nextDouble(0.1, 1) : to;
        boolean banded = random.nextBoolean();
        List<Point> points = new ArrayList<>();
        int count = random.nextInt(1, 20);
        for (int i = 0; i < count; i++) {
            double flow = count == 1 ? from : from + (last - from) * i / (count - 1);
            points.add(new Point(flow, mixture(any(0.01, 30), banded ? 20.0 : null)));
        }
        double authority = any(1, 100) / 100;
        return new MixtureLine(
                points,
                List.of(
                        spot(Named.IDLE, idle, random.nextBoolean() ? anyMixture() : null),
                        spot(Named.CRUISE, cruise, anyMixture()),
                        spot(Named.PEAK, peak, anyMixture())),
                from,
                to,
                null,
                ends ? last : null,
                false,
                1 - authority,
                1 + authority);
    }

    private Mixture anyMixture() {
        double lambda = random.nextBoolean() ? any(0.7, 1.4) : any(0.01, 30);
        return mixture(lambda, random.nextBoolean() ? 10.0 : null);
    }

    private static Mixture mixture(double lambda, @Nullable Double bandPercent) {
        double trim = (lambda - 1) * 100;
        return new Mixture(
                lambda,
                bandPercent == null ? null : lambda / (1 + bandPercent / 100),
                bandPercent == null ? null : lambda / (1 - bandPercent / 100),
                trim,
                Math.abs(trim) / 25 * 100,
                lambda);
    }

    private static Prediction prediction(List<Alone> alone, @Nullable Mixture whole) {
        return new Prediction(
                new Ratios(null, null, null, null, null),
                whole,
                null,
                null,
                null,
                25,
                List.of(),
                Risk.HIGH,
                List.of(),
                alone,
                List.of());
    }

    private static Spot spot(Named named, double flow, @Nullable Mixture mixture) {
        return new Spot(named, flow, mixture);
    }

    private static Spot spot(MixtureLine line, Named named) {
        return line.spots().stream()
                .filter(spot -> spot.named() == named)
                .findFirst()
                .orElseThrow();
    }

    private static double lambda(Spot spot) {
        return requireNonNull(spot.mixture()).lambda();
    }

    private static @Nullable Double ys(LambdaPicture.@Nullable Limit limit) {
        return limit == null ? null : limit.y();
    }

    private static List<At> places(String path) {
        List<At> places = new ArrayList<>();
        Matcher place = PLACE.matcher(path);
        while (place.find()) {
            places.add(new At(Double.parseDouble(place.group(1)), Double.parseDouble(place.group(2))));
        }
        return places;
    }

    private static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.api.Assertions.within(0.06);
    }

    private double any(double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }
}
