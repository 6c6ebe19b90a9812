package org.bayhold.gate;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Call;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Ids;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;

/** The shop's policy as stored. */
@Component
class PolicyBook {
    static final String SET = "POLICY_SET";

    private final PolicyRows rows;
    private final WriteTemplate writes;

    PolicyBook(PolicyRows rows, WriteTemplate writes) {
        this.rows = rows;
        this.writes = writes;
    }

    Policies policies() {
        return new Policies(rows.findAll().stream().map(PolicyRow::dated).toList());
    }

    /** A version with who set it. */
    record Version(Instant at, UUID by, Policy policy) {}

    /** Every version, the newest first. */
    List<Version> versions() {
        return rows.findAll().stream()
                .map(row -> new Version(
                        row.dated().recordedAt(), row.recordedBy(), row.dated().policy()))
                .sorted(Comparator.comparing(Version::at).reversed())
                .toList();
    }

    /** Sets what the request names; every decision that is being made waits, or was made under the old policy. */
    Policy set(Call call, PolicyRequest request) {
        if (Boolean.TRUE.equals(request.driveLogRequired())) {
            throw Refusal.invalid("driveLogRequired", "policy.no-drive-logs-yet");
        }
        return writes.write(call.request(), Chains.SHOP, Policy.class, chain -> {
                    Policy now = policies().at(chain.recordedAt(), chain.recordedAt());
                    Policy next = new Policy(
                            or(request.readBackRequired(), now.readBackRequired()),
                            request.readBackMaxAgeHours() == null
                                    ? now.readBackMaxAgeHours()
                                    : request.readBackMaxAgeHours(),
                            or(request.troubleCodesChecked(), now.troubleCodesChecked()),
                            or(request.driveLogRequired(), now.driveLogRequired()),
                            or(request.acknowledgementRequired(), now.acknowledgementRequired()),
                            or(request.secondPersonRequired(), now.secondPersonRequired()));
                    UUID id = Ids.next();
                    rows.save(new PolicyRow(id, next, chain.recordedAt(), chain.by()));
                    chain.append(SET, id, chain.recordedAt(), next);
                    return next;
                })
                .value();
    }

    private static boolean or(@org.jspecify.annotations.Nullable Boolean asked, boolean now) {
        return asked == null ? now : asked;
    }
}
