package org.bayhold.gate;

import java.util.List;
import java.util.Optional;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.Prediction;
import org.springframework.stereotype.Component;

/** A car, as it is or as it might be, against a calibration, be it the one in its ECU or another. It decides nothing. */
@Component
public class Comparisons {
    private final Predicting predicting;
    private final PredictionWords words;
    private final DecisionViews views;

    Comparisons(Predicting predicting, PredictionWords words, DecisionViews views) {
        this.predicting = predicting;
        this.words = words;
        this.views = views;
    }

    /**
     * How a car and a calibration differ.
     *
     * @param gaps the places that the calibration was not written for; empty where it covers the whole build sheet
     * @param build what the computation works on
     * @param prediction what the gaps do; empty where there are none, or it could not be worked out
     */
    public record Comparison(List<Gap> gaps, Build build, Optional<Prediction> prediction) {
        public Comparison {
            gaps = List.copyOf(gaps);
        }
    }

    /** @param revision empty for the factory's calibration, or where nobody knows what the ECU runs */
    public Comparison of(CarState car, Optional<Revision> revision, EffectGroups groups) {
        List<Gap> gaps = Coverage.gaps(car, revision, groups);
        Build build = predicting.build(car, revision, gaps);
        return new Comparison(gaps, build, gaps.isEmpty() ? Optional.empty() : Predicting.predicted(build));
    }

    public List<DecisionView.Mismatch> mismatches(List<Gap> gaps) {
        return views.mismatches(gaps);
    }

    public PredictionView view(Prediction prediction) {
        return words.view(prediction);
    }
}
