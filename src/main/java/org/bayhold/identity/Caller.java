package org.bayhold.identity;

import java.io.Serializable;
import java.util.Set;
import java.util.UUID;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * Who is asking.
 *
 * @param tokenId the access token that was shown; null for a signed-in page
 * @param maySign the token was made for signatures
 * @param units in which pages show this person figures; an answer of the API is in SI, whoever asks
 */
public record Caller(
        UUID userId,
        String username,
        Set<Role> roles,
        @Nullable UUID tokenId,
        boolean maySign,
        Units units) implements Serializable {
    public Caller {
        roles = Set.copyOf(roles);
    }

    /** The same person, for one request that carried the password again. */
    Caller signing() {
        return new Caller(userId, username, roles, tokenId, true, units);
    }

    public boolean may(Act act) {
        return act.allowedTo(roles);
    }

    /** Refuses (FORBIDDEN) unless this caller may do {@code act}. */
    public void must(Act act) {
        if (!may(act)) {
            throw Refusal.forbidden("forbidden.act", act.name());
        }
    }

    /** Refuses (FORBIDDEN) unless this caller may do {@code act} and can sign for it. */
    public void mustSign(Act act) {
        must(act);
        if (!maySign) {
            throw Refusal.forbidden("forbidden.signature");
        }
    }
}
