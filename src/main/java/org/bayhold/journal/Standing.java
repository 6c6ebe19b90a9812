package org.bayhold.journal;

import java.util.Optional;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Whether the record stood up to the verification at the start. Where it did not, nothing is shown of it and nothing is
 * written to it until a start finds it intact.
 */
@Component
public class Standing {
    private volatile @Nullable BrokenEntry broken;

    void isBroken(BrokenEntry first) {
        this.broken = first;
    }

    /** The first broken place; empty where the record is intact. */
    public Optional<BrokenEntry> broken() {
        return Optional.ofNullable(broken);
    }

    /** @throws Refusal UNAVAILABLE where the record is broken */
    void mustBeIntact() {
        if (broken != null) {
            throw Refusal.of(Code.UNAVAILABLE, "record.broken");
        }
    }
}
