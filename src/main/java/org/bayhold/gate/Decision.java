package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * What the gate decided, with every check.
 *
 * @param rules the version of the rule set
 * @param risk null for CLEAR
 * @param mismatches the places that the calibration was not written for
 * @param prediction what they do; null where nothing differs, or nobody asked
 */
public record Decision(
        int rules,
        Instant effectiveAt,
        Instant knownAt,
        Verdict verdict,
        @Nullable Risk risk,
        List<CheckResult> checks,
        List<Gap> mismatches,
        @Nullable Prediction prediction,
        CarState car) {
    public Decision {
        checks = List.copyOf(checks);
        mismatches = List.copyOf(mismatches);
    }

    /** The same decision, of which is known what its mismatches do. No prediction changes the verdict. */
    Decision predicted(Prediction known, Risk graded) {
        return new Decision(rules, effectiveAt, knownAt, verdict, graded, checks, mismatches, known, car);
    }

    /** Whether the car may leave. */
    public enum Verdict {
        CLEAR,
        HOLD
    }

    public boolean isClear() {
        return verdict == Verdict.CLEAR;
    }

    public List<CheckResult> failed() {
        return checks.stream().filter(CheckResult::failed).toList();
    }

    public boolean fails(Check check) {
        return failed().stream().anyMatch(result -> result.code() == check);
    }
}
