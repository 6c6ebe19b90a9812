package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.jspecify.annotations.Nullable;

/**
 * What the gate decided, with every check.
 *
 * @param rules the version of the rule set
 * @param risk null for CLEAR
 * @param mismatches the places that the calibration was not written for
 */
public record Decision(
        int rules,
        Instant effectiveAt,
        Instant knownAt,
        Verdict verdict,
        @Nullable Risk risk,
        List<CheckResult> checks,
        List<Gap> mismatches,
        CarState car) {
    public Decision {
        checks = List.copyOf(checks);
        mismatches = List.copyOf(mismatches);
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
