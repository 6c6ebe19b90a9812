package org.bayhold.drives;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.bayhold.drivelog.AnyDrive;
import org.bayhold.drivelog.Pull;
import org.bayhold.drivelog.Pull.Moment;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drives.PullPicture.Panel;
import org.bayhold.drives.PullScales.Channel;
import org.bayhold.page.Drawn;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Of the pulls the worst are drawn, in the same scales; what was not logged is in no picture. */
class PullPicturesTest {
    private final long seed = Seed.OF_THIS_RUN;

    @Test
    void theWorstAreDrawnAndAllAreInTheTable() {
        for (int count : new int[] {1, 2, 6, 7, 64}) {
            for (int n = 0; n < 60; n++) {
                SplittableRandom random = new SplittableRandom(seed + n);
                List<Pull> pulls = AnyLog.pulls(random, count);
                PullPictures pictures = of(pulls, random.nextBoolean() ? 180.0 : null, Units.METRIC);
                String where = Seed.repeats(seed + n);
                assertThat(pictures.rows()).as(where).hasSize(count);
                assertThat(pictures.drawn()).as(where).hasSizeLessThanOrEqualTo(PullPictures.DRAWN);
                Set<Integer> drawn =
                        pictures.drawn().stream().map(PullPicture::number).collect(Collectors.toSet());
                double least = drawn.stream()
                        .mapToDouble(number -> pulls.get(number - 1).concern())
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
                for (int i = 0; i < count; i++) {
                    assertThat(drawn.contains(i + 1)
                                    || pulls.get(i).concern() <= least
                                    || channels(pulls.get(i)).isEmpty())
                            .as(where)
                            .isTrue();
                }
                pictures.drawn().forEach(one -> assertDrawn(one, pulls.get(one.number() - 1), Units.METRIC, where));
                assertSameScales(pictures.drawn(), where);
            }
        }
    }

    @Test
    void realPullsAreDrawnInTheReadersUnits() {
        for (Units units : Units.values()) {
            List<Pull> pulls = AnyDrive.complete(seed, 1).pulls();
            PullPictures pictures = of(pulls, AnyDrive.BOOST_TARGET_KPA, units);
            assertThat(pictures.drawn()).hasSize(3);
            for (PullPicture one : pictures.drawn()) {
                Pull pull = pulls.get(one.number() - 1);
                assertThat(one.panels()).extracting(Panel::channel).containsExactly(Channel.values());
                assertDrawn(one, pull, units, "");
                assertThat(one.panels().get(1).worst())
                        .isEqualTo(units.number(requireNonNull(pull.manifoldKpa()), "kPa", 0));
                assertThat(one.panels().get(1).dashed()).isNotEmpty();
            }
        }
    }

    @Test
    void noPullIsNoPictureAndNothingLoggedIsATableAlone() {
        assertThat(PullPictures.of(List.of(), Thresholds.DEFAULTS, 180.0, Units.METRIC, AnyLog.WORDS))
                .isNull();
        PullPictures silent = of(List.of(pull(moment(0, 2000, null), moment(1, 3000, null))), 180.0, Units.METRIC);
        assertThat(silent.drawn()).isEmpty();
        assertThat(silent.rows()).hasSize(1);
        assertThat(silent.rows().get(0).pressure()).isEmpty();
    }

    /** A hole breaks the line, a moment alone is a dot, and lambda that is far off is said in figures. */
    @Test
    void whatIsNotKnownIsNotDrawn() {
        Pull pull = pull(
                moment(0, 2000, 0.9),
                moment(1, 2500, null),
                moment(2, 3000, 0.85),
                moment(3, 3500, 0.86),
                moment(4, 4000, null),
                moment(5, 4500, 16.0));
        Panel panel =
                of(List.of(pull), null, Units.METRIC).drawn().get(0).panels().get(0);
        assertThat(panel.channel()).isEqualTo(Channel.LAMBDA);
        assertThat(Drawn.places(panel.line())).hasSize(4);
        assertThat(panel.dashed()).isEmpty();
        assertThat(panel.above()).isEqualTo("▲ 16");
    }

    /** The driver lifts: the last tenths fold back and are left out; what lasts is no lifting. */
    @Test
    void whereTheDriverLiftsThePictureEnds() {
        Pull lifted = pull(moment(0, 2000, 0.9), moment(3, 5000, 0.85), moment(3.3, 4900, 1.0));
        Pull held = pull(moment(0, 2000, 0.9), moment(3, 5000, 0.85), moment(4, 4900, 1.0));
        assertThat(PullPicture.drawn(lifted)).hasSize(2);
        assertThat(PullPicture.drawn(held)).hasSize(3);
    }

    private static PullPictures of(List<Pull> pulls, @Nullable Double target, Units units) {
        return requireNonNull(PullPictures.of(pulls, Thresholds.DEFAULTS, target, units, AnyLog.WORDS));
    }

    private static List<Channel> channels(Pull pull) {
        return List.of(Channel.values()).stream()
                .filter(channel ->
                        PullPicture.drawn(pull).stream().anyMatch(moment -> channel.measured(moment) != null))
                .toList();
    }

    private static void assertDrawn(PullPicture one, Pull pull, Units units, String where) {
        assertThat(one.panels()).as(where).extracting(Panel::channel).isEqualTo(channels(pull));
        double before = 0;
        for (Panel panel : one.panels()) {
            assertThat(panel.top() - before).as(where).isGreaterThanOrEqualTo(20);
            before = panel.bottom();
            assertThat(Drawn.places(panel.line() + panel.dashed()))
                    .as(where)
                    .allMatch(at -> at.x() >= one.left() - 0.1
                            && at.x() <= one.right() + 0.1
                            && at.y() >= panel.top() - 0.1
                            && at.y() <= panel.bottom() + 0.1);
            assertThat(Plot.width(panel.name()) + Plot.width(panel.worst()))
                    .as(where)
                    .isLessThanOrEqualTo(Plot.RIGHT);
            Drawn.assertRising(panel.ticks(), -1, where);
            if (panel.above().isEmpty() && panel.below().isEmpty()) {
                assertReads(one, panel, pull, units, where);
            }
        }
        assertThat(one.height()).as(where).isGreaterThan((int) before + Plot.ROW);
        Drawn.assertRising(one.speeds(), 1, where);
    }

    /** Each moment that is known is at its place, and there is no other; read by what stands at the axes. */
    private static void assertReads(PullPicture one, Panel panel, Pull pull, Units units, String where) {
        List<Drawn.At> drawn = Drawn.places(panel.line()).stream().distinct().toList();
        List<Moment> known = PullPicture.drawn(pull).stream()
                .filter(moment -> panel.channel().measured(moment) != null)
                .toList();
        assertThat(drawn.size()).as(where).isLessThanOrEqualTo(known.size());
        if (one.speeds().size() < 2 || panel.ticks().size() < 2) {
            return;
        }
        for (Moment moment : known) {
            double figure = units.convert(
                    requireNonNull(panel.channel().measured(moment)),
                    panel.channel().unit());
            double x = at(one.speeds(), moment.rpm());
            double y = at(panel.ticks(), figure);
            assertThat(drawn)
                    .as(where)
                    .anyMatch(place -> Math.abs(place.x() - x) < 0.06 && Math.abs(place.y() - y) < 0.06);
        }
    }

    private static double at(List<Plot.Tick> ticks, double figure) {
        Plot.Tick one = ticks.get(0);
        Plot.Tick other = ticks.get(1);
        double first = Double.parseDouble(one.text());
        return one.at() + (figure - first) / (Double.parseDouble(other.text()) - first) * (other.at() - one.at());
    }

    private static void assertSameScales(List<PullPicture> drawn, String where) {
        assertThat(drawn.stream().map(PullPicture::speeds).distinct().count())
                .as(where)
                .isLessThanOrEqualTo(1);
        for (Channel channel : Channel.values()) {
            assertThat(drawn.stream()
                            .flatMap(one -> one.panels().stream())
                            .filter(panel -> panel.channel() == channel)
                            .map(panel -> panel.ticks().stream()
                                    .map(tick -> tick.text() + " " + Math.round((tick.at() - panel.top()) * 10))
                                    .toList())
                            .distinct()
                            .count())
                    .as(where)
                    .isLessThanOrEqualTo(1);
        }
    }

    private static Moment moment(double seconds, double rpm, @Nullable Double lambda) {
        return new Moment(seconds, rpm, lambda, null, null, null, null);
    }

    private static Pull pull(Moment... trace) {
        return new Pull(1, 9, 0, 4, 2000, 5000, 90, null, null, null, null, null, null, null, null, List.of(trace));
    }
}
