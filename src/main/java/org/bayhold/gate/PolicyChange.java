package org.bayhold.gate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bayhold.journal.CanonicalJson;

/**
 * One thing that a version of the policy changed.
 *
 * @param ofDriveLogs whether it is a threshold of the drive-log check
 * @param now as somebody reads it: {@link Asked}, or a figure with its unit; so is {@code before}
 */
record PolicyChange(String name, boolean ofDriveLogs, Object now, Object before) {
    /** In the order in which the page asks. */
    static List<PolicyChange> between(Policy before, Policy now, CanonicalJson json) {
        List<PolicyChange> changes = new ArrayList<>();
        Map<String, Boolean> asked = PolicyForm.asked(before);
        PolicyForm.asked(now)
                .forEach((name, yes) -> add(changes, name, Asked.of(yes), Asked.of(asked.getOrDefault(name, !yes))));
        add(changes, PolicyForm.HOURS, hours(now), hours(before));
        ThresholdLine.of(ThresholdGroup.ALL.attributes(), now.thresholds(), before.thresholds(), json).stream()
                .filter(ThresholdLine::differs)
                .map(line -> new PolicyChange(line.name(), true, line.shownNow(), line.shownOther()))
                .forEach(changes::add);
        return changes;
    }

    private static void add(List<PolicyChange> changes, String name, Object now, Object before) {
        if (!now.equals(before)) {
            changes.add(new PolicyChange(name, false, now, before));
        }
    }

    private static String hours(Policy policy) {
        return policy.readBackMaxAgeHours() + " h";
    }
}
