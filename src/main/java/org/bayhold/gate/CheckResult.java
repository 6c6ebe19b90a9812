package org.bayhold.gate;

import java.util.List;
import java.util.UUID;

/**
 * The answer of one check.
 *
 * @param records the records that it rests on
 */
public record CheckResult(Check code, Outcome outcome, Reason reason, List<UUID> records) {
    public CheckResult {
        records = List.copyOf(records);
    }

    static CheckResult pass(Check code, Reason reason, UUID... records) {
        return new CheckResult(code, Outcome.PASS, reason, List.of(records));
    }

    static CheckResult fail(Check code, Reason reason, List<UUID> records) {
        return new CheckResult(code, Outcome.FAIL, reason, records);
    }

    static CheckResult fail(Check code, Reason reason, UUID... records) {
        return fail(code, reason, List.of(records));
    }

    static CheckResult notRequired(Check code, Reason reason) {
        return new CheckResult(code, Outcome.NOT_REQUIRED, reason, List.of());
    }

    public boolean failed() {
        return outcome == Outcome.FAIL;
    }
}
