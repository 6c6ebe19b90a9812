package org.bayhold.journal;

import com.github.f4b6a3.uuid.UuidCreator;
import java.util.UUID;

/** Identifiers of records: UUID version 7 (RFC 9562), so that they sort by the time they were made. */
public final class Ids {
    private Ids() {}

    public static UUID next() {
        return UuidCreator.getTimeOrderedEpoch();
    }
}
