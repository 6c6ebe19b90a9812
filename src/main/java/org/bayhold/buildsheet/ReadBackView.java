package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.TroubleCode;
import org.jspecify.annotations.Nullable;

/**
 * A recorded ECU check.
 *
 * @param troubleCodes null where the ECU was not asked for its stored ones
 * @param readiness null where the ECU was not asked
 * @param matches it shows what the record says is in the ECU; null where the record does not say, or cannot be compared
 */
record ReadBackView(
        UUID id,
        String kind,
        UUID vehicleId,
        Instant effectiveAt,
        Instant recordedAt,
        String by,
        @Nullable String calid,
        @Nullable String cvn,
        @Nullable String fileSha256,
        @Nullable List<TroubleCode> troubleCodes,
        @Nullable Readiness readiness,
        Fact.Source source,
        @Nullable Boolean matches,
        @Nullable String performedBy,
        @Nullable String note,
        @Nullable UUID retuneItemId,
        List<String> warnings) {}
