package org.bayhold.gate;

import java.util.Locale;
import java.util.Optional;
import org.bayhold.catalog.Category;
import org.bayhold.page.Units;
import org.bayhold.prediction.Amount;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Prediction.Boost;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Sentence;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Predictions in words. */
@Component
class PredictionWords {
    private final MessageSource messages;

    PredictionWords(MessageSource messages) {
        this.messages = messages;
    }

    /** As answered by the API and as stored: in SI. */
    PredictionView view(Prediction prediction) {
        return view(prediction, Units.METRIC);
    }

    /** As a page shows it: the sentences in somebody's units, the figures as ever. */
    PredictionView view(Prediction prediction, Units units) {
        Optional<Mixture> mixture = Optional.ofNullable(prediction.mixture());
        Optional<Boost> boost = Optional.ofNullable(prediction.boost());
        return new PredictionView(
                prediction.ratios().airMeter(),
                prediction.ratios().airMeterBandPercent(),
                prediction.ratios().fuelDelivery(),
                prediction.ratios().fuelDeliveryAtIdle(),
                prediction.ratios().stoichiometric(),
                mixture.map(Mixture::lambda).orElse(null),
                Optional.ofNullable(prediction.mixtureAtIdle())
                        .map(Mixture::lambda)
                        .orElse(null),
                mixture.map(Mixture::lambdaLow).orElse(null),
                mixture.map(Mixture::lambdaHigh).orElse(null),
                mixture.map(Mixture::lambdaLeft).orElse(null),
                mixture.map(Mixture::trimDemandPercent).orElse(null),
                prediction.trimAuthorityPercent(),
                mixture.map(Mixture::authorityUsedPercent).orElse(null),
                prediction.injectorDutyPercent(),
                boost.map(Boost::readingRatio).orElse(null),
                boost.map(Boost::reachedKpa).orElse(null),
                prediction.notComputable().stream()
                        .map(entry -> new PredictionView.NotComputable(
                                entry.place().category(), entry.place().position(), sentence(entry.why(), units)))
                        .toList(),
                prediction.risk(),
                prediction.sentences().stream()
                        .map(sentence -> sentence(sentence, units))
                        .toList());
    }

    String sentence(Sentence sentence, Units units) {
        Object[] shown = sentence.arguments().stream()
                .map(argument -> shown(argument, units))
                .toArray();
        return messages.getMessage(sentence.key(), shown, Locale.ENGLISH);
    }

    private Object shown(Object argument, Units units) {
        if (argument instanceof Amount amount) {
            return units.show(amount.value(), amount.unit(), amount.decimals());
        }
        return argument instanceof Category category
                ? messages.getMessage("category." + category.name(), null, Locale.ENGLISH)
                : argument;
    }
}
