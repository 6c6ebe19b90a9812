package org.bayhold.buildsheet;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import org.bayhold.obd.TroubleCode;
import org.jspecify.annotations.Nullable;

/** An ECU check to record: CALID and CVN, or the hash of the file that was read out, or the raw answers. */
record ReadBackRequest(
        @Nullable @Size(min = 1, max = 200) String calid,
        @Nullable @Size(min = 1, max = 200) String cvn,

        @Nullable @Pattern(regexp = "[0-9A-Fa-f]{64}", message = "must be the 64 hex digits of a SHA-256") String fileSha256,

        @Nullable @Size(max = 65_536) String response,

        @Nullable @Size(max = 200) List<@NotNull @Pattern(regexp = TroubleCode.FORM, message = "must be a trouble code like P0171") String>
                troubleCodes,

        Fact.@Nullable Source source,
        @Nullable Instant effectiveAt,
        @Nullable @Size(max = 200) String performedBy,
        @Nullable @Size(max = 2000) String note)
        implements FactRequest {}
