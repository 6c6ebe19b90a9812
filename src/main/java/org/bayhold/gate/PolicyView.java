package org.bayhold.gate;

import org.bayhold.drivelog.Thresholds;

/** The policy as the API answers it: whole, the thresholds in force among it. */
record PolicyView(
        boolean readBackRequired,
        int readBackMaxAgeHours,
        boolean troubleCodesChecked,
        boolean driveLogRequired,
        boolean acknowledgementRequired,
        boolean secondPersonRequired,
        Thresholds driveLogThresholds) {
    static PolicyView of(Policy policy) {
        return new PolicyView(
                policy.readBackRequired(),
                policy.readBackMaxAgeHours(),
                policy.troubleCodesChecked(),
                policy.driveLogRequired(),
                policy.acknowledgementRequired(),
                policy.secondPersonRequired(),
                policy.thresholds());
    }
}
