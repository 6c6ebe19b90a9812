package org.bayhold.calibration;

import java.util.Map;
import org.bayhold.prediction.Assumptions;
import org.jspecify.annotations.Nullable;

/**
 * What a revision assumes of the car, for the prediction.
 *
 * @param assumes by name; what the prediction knows of it stands in {@code prediction.Assumptions}
 * @param boostTargetKpa absolute; null where it gives none
 */
public record Assumed(Map<String, Object> assumes, @Nullable Double boostTargetKpa) {
    public static final Assumed NOTHING = new Assumed(Map.of(), null);

    boolean isCompressionIgnition() {
        return Assumptions.isCompressionIgnition(assumes);
    }
}
