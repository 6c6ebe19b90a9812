package org.bayhold.gate;

import static org.bayhold.gate.Check.NO_RELATED_TROUBLE_CODES;

import java.util.List;
import java.util.Optional;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.obd.TroubleCode;

/** Whether the ECU keeps a fault of mixture, airflow, boost or combustion since the flash. */
final class TroubleCodeCheck {
    private TroubleCodeCheck() {}

    /** As the newest ECU check since the flash that brought codes has it; without one nothing is asked. */
    static CheckResult noneRelated(Question question) {
        if (!question.policy().troubleCodesChecked()) {
            return CheckResult.notRequired(NO_RELATED_TROUBLE_CODES, Reason.NOT_ASKED_FOR);
        }
        Optional<Fact.ReadBack> newest = newestWithCodes(question.car());
        if (newest.isEmpty()) {
            return CheckResult.notRequired(NO_RELATED_TROUBLE_CODES, Reason.CODES_NOT_READ);
        }
        Fact.ReadBack check = newest.get();
        return hasRelated(check)
                ? CheckResult.fail(
                        NO_RELATED_TROUBLE_CODES,
                        Reason.RELATED_CODES,
                        check.stamp().id())
                : CheckResult.pass(
                        NO_RELATED_TROUBLE_CODES,
                        Reason.NO_RELATED_CODES,
                        check.stamp().id());
    }

    /** One at the very time of the flash proves nothing, and counts only against release (rule 9). */
    private static Optional<Fact.ReadBack> newestWithCodes(CarState car) {
        List<Fact.ReadBack> since = car.readBacks().stream()
                .filter(check -> check.troubleCodes() != null)
                .filter(check -> ReadBackCheck.isSinceFlash(car, check))
                .toList();
        return since.stream()
                .filter(check -> ReadBackCheck.countsAsEvidence(car, check))
                .reduce((earlier, later) -> later)
                .or(() -> since.stream().filter(TroubleCodeCheck::hasRelated).reduce((earlier, later) -> later));
    }

    private static boolean hasRelated(Fact.ReadBack check) {
        List<TroubleCode> codes = check.troubleCodes();
        return codes != null && codes.stream().anyMatch(TroubleCode::related);
    }
}
