package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.junit.jupiter.api.Test;

/** A version of the policy from before the shop could ask for trouble codes says what the migration wrote into its row. */
class PolicyOfBeforeTest {
    private final CanonicalJson json = new CanonicalJson();

    @Test
    void itAskedForThem() {
        String old = "{\"acknowledgementRequired\":false,\"driveLogRequired\":false,\"readBackMaxAgeHours\":48,"
                + "\"readBackRequired\":true,\"secondPersonRequired\":true}";

        Policy policy = JournalledGate.policy(json, json.parse(old));

        assertThat(policy).isEqualTo(new Policy(true, 48, true, false, false, true));
    }

    @Test
    void aLaterOneSaysItItself() {
        Policy policy = new Policy(true, 48, false, false, true, false);

        assertThat(JournalledGate.policy(json, json.tree(policy))).isEqualTo(policy);
        assertThat(new PolicyRow(new UUID(1, 2), policy, Instant.EPOCH, new UUID(1, 1))
                        .dated()
                        .policy())
                .isEqualTo(policy);
    }
}
