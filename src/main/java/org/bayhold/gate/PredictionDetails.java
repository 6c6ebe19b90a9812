package org.bayhold.gate;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A prediction as pages show it, through {@code prediction.html}: sentences and figures, pictures, and how each number came
 * about. {@link PredictionPages} makes it; what is inside the pictures is between it and the templates.
 *
 * @param view the sentences in the reader's units, the figures in SI
 * @param lambda null where no ratio is known at load
 * @param contributions null where nothing that differs can be computed
 * @param duty null where a figure is not recorded
 * @param dutyNeeds what would have to be recorded for it
 */
public record PredictionDetails(
        PredictionView view,
        @Nullable LambdaPicture lambda,
        @Nullable ContributionPicture contributions,
        @Nullable DutyPicture duty,
        List<String> dutyNeeds,
        List<TraceLine.Group> trace) {
    /** Whether anything is left out of the numbers that are drawn. */
    public boolean incomplete() {
        return !view.notComputable().isEmpty();
    }
}
