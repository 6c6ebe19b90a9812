package org.bayhold.buildsheet;

import java.util.List;
import java.util.UUID;
import org.bayhold.drivelog.Verdict;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/** Judged drives of which only the verdict matters. */
public final class MadeLogs {
    private MadeLogs() {}

    public static DriveLogged log(
            Stamp stamp,
            @Nullable UUID again,
            @Nullable UUID calibrationId,
            @Nullable String map,
            Verdict verdict,
            Fact.Source source) {
        return log(stamp, again, calibrationId, map, verdict, source, "cd".repeat(32));
    }

    /** @param judgementSha256 of the whole judgement, as it is kept */
    public static DriveLogged log(
            Stamp stamp,
            @Nullable UUID again,
            @Nullable UUID calibrationId,
            @Nullable String map,
            Verdict verdict,
            Fact.Source source,
            String judgementSha256) {
        return new DriveLogged(
                stamp,
                again,
                "ab".repeat(32),
                1_000,
                calibrationId,
                map,
                verdict,
                List.of(),
                List.of(),
                verdict == Verdict.FAIL ? Risk.HIGH : Risk.LOW,
                null,
                null,
                null,
                List.of(),
                null,
                judgementSha256,
                source,
                null,
                null);
    }
}
