package org.bayhold.audit;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A row of the audit as one line of cells, for tables of every kind. */
final class Columns {
    /** Numbers, truth values or text; a time is text of ISO 8601 in UTC, so that no program reads it in a zone of its own. */
    record Column(String name, Function<AuditedHandoff, @Nullable Object> cell) {}

    static final List<Column> ALL = List.of(
            new Column("handoffId", row -> row.handoffId().toString()),
            new Column("vehicleId", row -> row.vehicle().id().toString()),
            new Column("vin", row -> row.vehicle().vin()),
            new Column("frameNumber", row -> row.vehicle().frameNumber()),
            new Column("plate", row -> row.vehicle().plate()),
            new Column("description", row -> row.vehicle().description()),
            new Column("handedOffAt", row -> time(row.handedOffAt())),
            new Column("recordedAt", row -> time(row.recordedAt())),
            new Column("basis", row -> row.basis().name()),
            new Column("decidedThen", row -> row.decidedThen().name()),
            new Column("failedThen", row -> names(row.failedThen())),
            new Column("knownThen", row -> row.knownThen().name()),
            new Column("failedKnownThen", row -> names(row.failedKnownThen())),
            new Column("knownNow", row -> row.knownNow().name()),
            new Column("failedKnownNow", row -> names(row.failedKnownNow())),
            new Column("findings", row -> names(row.findings())),
            new Column("unmatchedSince", row -> time(row.unmatchedSince())),
            new Column("matchedAgainAt", row -> time(row.matchedAgainAt())),
            new Column("daysUnmatched", AuditedHandoff::daysUnmatched),
            new Column("stillUnmatchedSince", row -> time(row.stillUnmatchedSince())),
            new Column("returnedAt", row -> time(row.returnedAt())),
            new Column("voided", AuditedHandoff::voided),
            new Column("handedOffBy", AuditedHandoff::handedOffBy));

    private Columns() {}

    private static @Nullable String time(@Nullable Instant time) {
        return time == null ? null : time.truncatedTo(ChronoUnit.MILLIS).toString();
    }

    private static String names(Collection<? extends Enum<?>> codes) {
        return codes.stream().map(Enum::name).collect(Collectors.joining(" "));
    }
}
