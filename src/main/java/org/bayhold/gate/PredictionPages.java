package org.bayhold.gate;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.bayhold.page.Units;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Predictions;
import org.bayhold.prediction.Sweep;
import org.bayhold.prediction.Sweep.DutyLine;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** What pages show of a prediction, of a car as it stands or as it might. */
@Component
public class PredictionPages {
    private static final Logger LOG = LoggerFactory.getLogger(PredictionPages.class);

    private final PredictionWords words;
    private final Traces traces;
    private final Predicting predicting;
    private final MessageSource messages;

    PredictionPages(PredictionWords words, Traces traces, Predicting predicting, MessageSource messages) {
        this.words = words;
        this.traces = traces;
        this.predicting = predicting;
        this.messages = messages;
    }

    /** Empty where nothing differs, and where its arithmetic fails: a picture must not take the car's page with it. */
    Optional<PredictionDetails> of(Decision decision, Units units) {
        if (decision.prediction() == null) {
            return Optional.empty();
        }
        try {
            return of(predicting.build(decision), units);
        } catch (RuntimeException e) {
            LOG.error("what the mismatches do was not drawn", e);
            return Optional.empty();
        }
    }

    /**
     * Empty where nothing differs.
     *
     * @param units in which the page is read
     */
    public Optional<PredictionDetails> of(Build build, Units units) {
        return Predictions.of(build).map(prediction -> details(build, prediction, units));
    }

    private PredictionDetails details(Build build, Prediction prediction, Units units) {
        Sweep sweep = Sweep.of(build).orElseThrow();
        MixtureLine mixture = sweep.mixture();
        DutyLine duty = sweep.duty();
        return new PredictionDetails(
                words.view(prediction, units),
                mixture == null ? null : LambdaPicture.of(mixture, units, names()),
                ContributionPicture.of(prediction, traces::place, message("pictures.whole")),
                duty == null ? null : DutyPicture.of(duty, units, dutyNames()),
                sweep.dutyNeeds().stream()
                        .map(need -> words.sentence(need, units))
                        .toList(),
                traces.of(prediction, units));
    }

    private DutyPicture.Names dutyNames() {
        return new DutyPicture.Names(
                message("flow.PEAK"), message("pictures.duty.warning"), message("pictures.duty.impossible"));
    }

    private LambdaPicture.Names names() {
        return new LambdaPicture.Names(
                message("flow.IDLE"),
                message("flow.CRUISE"),
                message("flow.PEAK"),
                message("pictures.no-more"),
                message("pictures.no-less"));
    }

    private String message(String key) {
        return Objects.requireNonNull(messages.getMessage(key, null, key, Locale.ENGLISH));
    }
}
