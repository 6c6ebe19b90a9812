package org.bayhold.gate;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.gate.Mixtures.anyMixture;
import static org.bayhold.gate.Mixtures.mixture;
import static org.bayhold.page.Drawn.ROUNDS;
import static org.bayhold.page.Drawn.any;
import static org.bayhold.page.Drawn.assertReadable;
import static org.bayhold.page.Drawn.assertRising;
import static org.bayhold.page.Drawn.places;
import static org.bayhold.page.Drawn.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.bayhold.page.Drawn;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.bayhold.prediction.Sweep.Named;
import org.bayhold.prediction.Sweep.Point;
import org.bayhold.prediction.Sweep.Spot;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whatever lambda is, it stays in its picture and keeps its order, and no word lies over another. */
class LambdaPictureTest {
    private static final LambdaPicture.Names NAMES =
            new LambdaPicture.Names("idle", "cruise", "peak", "can add no more", "can take no more");

    private final long seed = Seed.OF_THIS_RUN;
    private SplittableRandom random = new SplittableRandom(seed);

    @Test
    void lambdaStaysInItsPictureWhateverItIs() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            MixtureLine line = line();
            Units units = random.nextBoolean() ? Units.METRIC : Units.IMPERIAL;
            LambdaPicture picture = LambdaPicture.of(line, units, NAMES);
            String where = Seed.repeats(seed + n);
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
            if (picture.line().isEmpty() && line.points().size() > 1) {
                assertThat(picture.above() != null || picture.below() != null)
                        .as(where)
                        .isTrue();
            }
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
                            .as(Seed.repeats(seed + n))
                            .isEqualTo(Double.compare(a.flowGPerS(), b.flowGPerS()));
                    assertThat(Double.compare(other.y(), one.y()))
                            .as(Seed.repeats(seed + n))
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
        List<Drawn.At> drawn = places(picture.line());
        assertThat(drawn.get(0).x()).isCloseTo(requireNonNull(picture.tableBegins()), within());
        assertThat(drawn.get(2).x()).isCloseTo(requireNonNull(picture.tableEnds()), within());
        assertThat(picture.tableEnds()).isLessThan(picture.right());
    }

    /** From next to nothing to far too much, with a table that ends or without. */
    private MixtureLine line() {
        double idle = any(random, 0.1, 100);
        double cruise = any(random, 0.5, 1_000);
        double peak = any(random, 1, 5_000);
        double from = Math.min(idle, Math.min(cruise, peak));
        double to = Math.max(idle, Math.max(cruise, peak));
        boolean ends = random.nextInt(3) == 0;
        double last = ends ? from + (to - from) * random.nextDouble(0.1, 1) : to;
        boolean banded = random.nextBoolean();
        List<Point> points = new ArrayList<>();
        int count = random.nextInt(1, 20);
        for (int i = 0; i < count; i++) {
            double flow = count == 1 ? from : from + (last - from) * i / (count - 1);
            points.add(new Point(flow, mixture(any(random, 0.01, 30), banded ? 20.0 : null)));
        }
        double authority = any(random, 1, 100) / 100;
        return new MixtureLine(
                points,
                List.of(
                        spot(Named.IDLE, idle, random.nextBoolean() ? anyMixture(random) : null),
                        spot(Named.CRUISE, cruise, anyMixture(random)),
                        spot(Named.PEAK, peak, anyMixture(random))),
                from,
                to,
                null,
                ends ? last : null,
                false,
                1 - authority,
                1 + authority);
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

    private static @Nullable Double ys(Plot.@Nullable Limit limit) {
        return limit == null ? null : limit.y();
    }
}
