package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.JournalledRow;
import org.junit.jupiter.api.Test;

/**
 * A version of the policy from before the shop could ask for trouble codes, or set thresholds of drive logs, says what the
 * migrations wrote into its row.
 */
class PolicyOfBeforeTest {
    private static final String BEFORE_CODES = "{\"acknowledgementRequired\":false,\"driveLogRequired\":false,"
            + "\"readBackMaxAgeHours\":48,\"readBackRequired\":true,\"secondPersonRequired\":true}";
    private static final String BEFORE_THRESHOLDS = "{\"acknowledgementRequired\":false,\"driveLogRequired\":false,"
            + "\"readBackMaxAgeHours\":48,\"readBackRequired\":true,\"secondPersonRequired\":true,"
            + "\"troubleCodesChecked\":false}";
    private static final Thresholds OWN =
            new Thresholds(82.5, 4.1, 9, 12, 61, 181, 4, 1.7, 79, 2.9, false, 6, 0, 5, 4, 2.5, 0.5, 80, 1, 3);

    private final CanonicalJson json = new CanonicalJson();

    @Test
    void itAskedForCodes() {
        Policy policy = JournalledGate.policy(json, json.parse(BEFORE_CODES));

        assertThat(policy).isEqualTo(new Policy(true, 48, true, false, false, true));
    }

    @Test
    void itHasNoThresholdsAndMeansTheDefaults() {
        Policy policy = JournalledGate.policy(json, json.parse(BEFORE_THRESHOLDS));

        assertThat(policy).isEqualTo(new Policy(true, 48, false, false, false, true, null));
        assertThat(policy.thresholds()).isEqualTo(Thresholds.DEFAULTS);
        assertThat(JournalledRow.of("policy_fact", row(policy)).columns()).containsEntry("drive_log_thresholds", null);
        assertThat(json.write(policy)).as("hashed as it was").isEqualTo(BEFORE_THRESHOLDS);
    }

    @Test
    void aLaterOneSaysItItself() {
        Policy policy = new Policy(true, 48, false, false, true, false, OWN);

        assertThat(JournalledGate.policy(json, json.parse(json.write(policy)))).isEqualTo(policy);
        assertThat(row(policy).dated(json).policy()).isEqualTo(policy);
        assertThat(policy.thresholds()).isEqualTo(OWN);
    }

    /** The row from the entry holds the very text that was stored. */
    @Test
    void theRowOfAnEntryIsTheOneThatWasStored() {
        Policy policy = new Policy(true, 48, false, false, true, false, OWN);
        Policy ofEntry = JournalledGate.policy(json, json.parse(json.write(policy)));

        assertThat(JournalledRow.of("policy_fact", row(ofEntry)))
                .isEqualTo(JournalledRow.of("policy_fact", row(policy)));
        assertThat(String.valueOf(
                        JournalledRow.of("policy_fact", row(policy)).columns().get("drive_log_thresholds")))
                .contains("\"warmCoolantC\":82.5", "\"idleSeconds\":61,", "\"needsLambda\":false")
                .hasSizeLessThan(1_000);
    }

    private PolicyRow row(Policy policy) {
        return new PolicyRow(new UUID(1, 2), policy, Instant.EPOCH, new UUID(1, 1), json);
    }
}
