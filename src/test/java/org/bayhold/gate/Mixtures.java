package org.bayhold.gate;

import static org.bayhold.page.Drawn.any;

import java.util.SplittableRandom;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/** Mixtures of which pictures are made. */
final class Mixtures {
    private Mixtures() {}

    static Mixture mixture(double lambda, @Nullable Double bandPercent) {
        double trim = (lambda - 1) * 100;
        return new Mixture(
                lambda,
                bandPercent == null ? null : lambda / (1 + bandPercent / 100),
                bandPercent == null ? null : lambda / (1 - bandPercent / 100),
                trim,
                Math.abs(trim) / 25 * 100,
                lambda);
    }

    static Mixture anyMixture(SplittableRandom random) {
        double lambda = random.nextBoolean() ? any(random, 0.7, 1.4) : any(random, 0.01, 30);
        return mixture(lambda, random.nextBoolean() ? 10.0 : null);
    }
}
