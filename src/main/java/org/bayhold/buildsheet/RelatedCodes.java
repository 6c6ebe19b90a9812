package org.bayhold.buildsheet;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.obd.TroubleCode;
import org.jspecify.annotations.Nullable;

/** The trouble codes of an ECU check as its row has them: the related ones, which is all that the gate asks. */
final class RelatedCodes {
    private RelatedCodes() {}

    static @Nullable String column(@Nullable List<TroubleCode> codes) {
        return codes == null
                ? null
                : codes.stream()
                        .filter(TroubleCode::related)
                        .map(TroubleCode::code)
                        .distinct()
                        .sorted()
                        .collect(Collectors.joining(","));
    }

    /** How the ECU keeps them is not in the row, and counts for nothing. */
    static @Nullable List<TroubleCode> of(@Nullable String column) {
        if (column == null) {
            return null;
        }
        return Stream.of(column.split(",", -1))
                .filter(code -> !code.isEmpty())
                .map(code -> new TroubleCode(code, TroubleCode.Kind.STORED, true))
                .toList();
    }
}
