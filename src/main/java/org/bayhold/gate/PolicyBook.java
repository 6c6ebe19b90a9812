package org.bayhold.gate;

import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.identity.Call;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Ids;
import org.bayhold.journal.OpenChain;
import org.bayhold.journal.WriteTemplate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.node.ObjectNode;

/** The shop's policy as stored. */
@Component
class PolicyBook {
    static final String SET = "POLICY_SET";

    private final PolicyRows rows;
    private final WriteTemplate writes;
    private final CanonicalJson json;

    PolicyBook(PolicyRows rows, WriteTemplate writes, CanonicalJson json) {
        this.rows = rows;
        this.writes = writes;
        this.json = json;
    }

    Policies policies() {
        return new Policies(rows.findAll().stream().map(row -> row.dated(json)).toList());
    }

    /** A version with who set it. */
    record Version(Instant at, UUID by, Policy policy) {}

    /** Every version, the newest first. */
    List<Version> versions() {
        return rows.findAll().stream()
                .map(row -> new Version(
                        row.recordedAt(), row.recordedBy(), row.dated(json).policy()))
                .sorted(Comparator.comparing(Version::at).reversed())
                .toList();
    }

    /** Sets what the request names; every decision that is being made waits, or was made under the old policy. */
    Policy set(Call call, PolicyRequest request) {
        Map<String, Object> thresholds = held(request.driveLogThresholds());
        return writes.write(call.request(), Chains.SHOP, Policy.class, chain -> {
                    Policy now = policies().at(chain.recordedAt(), chain.recordedAt());
                    Policy next = request.over(now, with(now.thresholds(), thresholds));
                    append(chain, next);
                    return next;
                })
                .value();
    }

    void append(OpenChain chain, Policy policy) {
        UUID id = Ids.next();
        rows.save(new PolicyRow(id, policy, chain.recordedAt(), chain.by(), json));
        chain.append(SET, id, chain.recordedAt(), policy);
    }

    /** A threshold that is null is left out, as any other field. */
    private static Map<String, Object> held(@Nullable Map<String, @Nullable Object> asked) {
        Map<String, Object> held = new LinkedHashMap<>();
        if (asked != null) {
            asked.forEach((name, value) -> {
                if (value != null) {
                    held.put(name, value);
                }
            });
        }
        ThresholdGroup.ALL.holdAll(PolicyRequest.THRESHOLDS, held);
        return held;
    }

    private Thresholds with(Thresholds now, Map<String, Object> asked) {
        ObjectNode next = (ObjectNode) json.tree(now);
        asked.forEach((name, value) -> next.set(name, json.tree(value)));
        return json.read(next, Thresholds.class);
    }
}
