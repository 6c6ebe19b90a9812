package org.bayhold.buildsheet;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** The two times that a question about a car is asked for. */
public record AsOf(Instant effectiveAt, Instant knownAt) {
    private static final Duration TAKEN_AS_NOW = Duration.ofSeconds(60);

    /**
     * The times asked for; each left out means now. Now is never before the car's last record, whatever this server's
     * clock says, so that a reader sees all that is committed.
     *
     * @throws Refusal INVALID for a time in the future
     */
    public static AsOf of(CarRecord record, Clock clock, @Nullable Instant effectiveAt, @Nullable Instant knownAt) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Instant last = record.facts().stream()
                .map(fact -> fact.stamp().recordedAt())
                .reduce(record.registration().recordedAt(), (a, b) -> a.isAfter(b) ? a : b);
        Instant present = now.isAfter(last) ? now : last;
        return new AsOf(asked(effectiveAt, "effectiveAt", present), asked(knownAt, "knownAt", present));
    }

    private static Instant asked(@Nullable Instant asked, String field, Instant present) {
        if (asked == null) {
            return present;
        }
        if (asked.isAfter(present.plus(TAKEN_AS_NOW))) {
            throw Refusal.invalid(field, "time.in-future", asked, present);
        }
        return asked.isAfter(present) ? present : asked;
    }
}
