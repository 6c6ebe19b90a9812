package org.bayhold.prediction;

import static org.bayhold.prediction.Sentence.shown;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Boost;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/** The sentences of a prediction, the gravest first. Texts stand in the bundle. */
final class Words {
    private static final double LEAN = 1.005;
    private static final double RICH = 0.995;

    private final Workings workings;
    private final List<Seat> differing;
    private final List<Sentence> sentences = new ArrayList<>();

    Words(Workings workings, List<Seat> differing) {
        this.workings = workings;
        this.differing = differing;
    }

    List<Sentence> of(
            @Nullable Mixture mixture, @Nullable Boost boost, @Nullable Double duty, List<Alone> alone, Risk risk) {
        if (risk == Risk.EXTREME) {
            say("prediction.do-not-start");
        }
        sayMixture(mixture);
        sayHiding(mixture, alone);
        sayBoost(boost);
        sayDuty(duty);
        sentences.addAll(Effects.of(differing));
        if (!workings.notComputable().isEmpty()) {
            say("prediction.not-all-computed");
        }
        if (differing.stream().allMatch(seat -> seat.group() == EffectGroup.DRIVELINE)) {
            say("prediction.driveline-only");
        }
        say("prediction.opens-nothing");
        return sentences;
    }

    private void sayMixture(@Nullable Mixture mixture) {
        if (mixture == null) {
            if (!workings.notComputable().isEmpty()) {
                say("prediction.no-mixture");
            }
            return;
        }
        double lambda = shown(mixture.lambda(), 3);
        if (mixture.lambda() > LEAN) {
            sentences.add(Sentence.of("prediction.lean", lambda));
        } else if (mixture.lambda() < RICH) {
            sentences.add(Sentence.of("prediction.rich", lambda));
        } else {
            sentences.add(Sentence.of("prediction.neither", lambda));
        }
        Double low = mixture.lambdaLow();
        Double high = mixture.lambdaHigh();
        if (low != null && high != null) {
            sentences.add(Sentence.of("prediction.band", shown(low, 3), shown(high, 3)));
        }
        sayTrim(mixture);
    }

    private void sayTrim(Mixture mixture) {
        double demand = shown(Math.abs(mixture.trimDemandPercent()), 1);
        double used = shown(mixture.authorityUsedPercent(), 0);
        double authority = workings.assumes.trimAuthority().value();
        if (demand == 0) {
            return;
        }
        sentences.add(
                mixture.trimDemandPercent() > 0
                        ? Sentence.of("prediction.adds", demand, authority, used)
                        : Sentence.of("prediction.takes-away", demand, authority, used));
        if (mixture.authorityUsedPercent() > 100) {
            sentences.add(Sentence.of("prediction.beyond-authority", shown(mixture.lambdaLeft(), 3)));
        } else {
            say("prediction.within-authority");
        }
    }

    /** Two wrong parts can make one right number. */
    private void sayHiding(@Nullable Mixture mixture, List<Alone> alone) {
        if (mixture == null || alone.size() < 2) {
            return;
        }
        Risk together = Grading.of(mixture);
        boolean hide =
                alone.stream().map(part -> Grading.of(part.mixture())).anyMatch(risk -> risk.compareTo(together) > 0);
        if (hide) {
            say("prediction.hiding");
        }
    }

    private void sayBoost(@Nullable Boost boost) {
        if (boost == null) {
            return;
        }
        if (boost.readingRatio() != null) {
            sentences.add(Sentence.of("prediction.boost-reading", shown(boost.readingRatio() * 100, 1)));
        }
        if (boost.reachedKpa() != null && boost.excessPercent() != null) {
            sentences.add(Sentence.of(
                    "prediction.boost-reached",
                    new Amount(boost.reachedKpa(), "kPa", 0),
                    shown(boost.excessPercent(), 1)));
        }
    }

    private void sayDuty(@Nullable Double duty) {
        Risk risk = duty == null ? Risk.LOW : Grading.ofDuty(duty);
        if (duty != null && risk != Risk.LOW) {
            sentences.add(
                    risk == Risk.EXTREME
                            ? Sentence.of("prediction.duty-impossible", shown(duty, 0))
                            : Sentence.of("prediction.duty-high", shown(duty, 0)));
        }
    }

    private void say(String key) {
        sentences.add(new Sentence(key, List.of()));
    }
}
