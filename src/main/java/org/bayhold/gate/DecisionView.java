package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.FlashedView;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * A decision of the gate as answered, and as stored with a handover.
 *
 * @param evaluatedAt the moment of the record that was looked at
 * @param rules the version of the rule set
 * @param prediction what the mismatches do; absent where nothing differs
 */
public record DecisionView(
        UUID vehicleId,
        Instant evaluatedAt,
        Instant effectiveAt,
        int rules,
        Decision.Verdict decision,
        @Nullable Risk risk,
        List<CheckView> checks,
        List<Mismatch> mismatches,
        @Nullable PredictionView prediction,
        @Nullable FlashedView flashed) {

    /** @param reason a sentence that a customer would understand */
    public record CheckView(Check code, Outcome outcome, String reason, Reason reasonCode, List<UUID> records) {}

    /** A place that the calibration was not written for. */
    public record Mismatch(
            Category category,
            @Nullable String position,
            EffectGroup group,
            PartView fitted,
            CalibratedFor calibratedFor,
            String why) {}

    /** What is fitted; the part's names are null unless it is of the catalogue. */
    public record PartView(
            Fitted.State state,
            @Nullable UUID partSpecId,
            @Nullable String maker,
            @Nullable String partNumber,
            @Nullable String specRevision) {}

    /** What the calibration was written for at the place. */
    public record CalibratedFor(boolean factory, boolean none, List<PartView> parts) {}
}
