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
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Prediction.Ratios;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sweep.DutyLine;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whatever the parts and the injectors do, their pictures hold it. */
class PredictionPicturesTest {
    private static final DutyPicture.Names DUTY =
            new DutyPicture.Names("peak", "85 %: no reserve", "100 %: impossible");

    private final long seed = Seed.OF_THIS_RUN;
    private SplittableRandom random = new SplittableRandom(seed);

    @Test
    void contributionsStayInTheirPicture() {
        for (int n = 0; n < ROUNDS; n++) {
            random = new SplittableRandom(seed + n);
            String where = Seed.repeats(seed + n);
            List<Alone> alone = new ArrayList<>();
            for (int i = random.nextInt(1, 7); i > 0; i--) {
                alone.add(new Alone(new Place(Category.INJECTORS, "rail " + i), anyMixture(random), null));
            }
            Prediction prediction = prediction(alone, random.nextBoolean() ? anyMixture(random) : null);
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
            String where = Seed.repeats(seed + n);
            DutyLine line = new DutyLine(any(random, 1, 5_000), any(random, 0.01, 5_000), 0.8, 4, 15);
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
}
