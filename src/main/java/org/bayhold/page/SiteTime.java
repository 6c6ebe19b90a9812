package org.bayhold.page;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Times as the site's clocks show them. */
@Component
public class SiteTime {
    private static final DateTimeFormatter SHOWN = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter EXACT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss", Locale.ENGLISH);
    private static final DateTimeFormatter SHOWN_DAY = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter TYPED = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ROOT);

    private final ZoneId zone;

    SiteTime(SiteSettings settings) {
        this.zone = settings.zone();
    }

    /**
     * A typed time.
     *
     * @param twice the clocks showed it twice, and the earlier of the two was taken
     */
    public record Typed(Instant at, boolean twice) {}

    public ZoneId zone() {
        return zone;
    }

    /** To the minute: {@code 29 Mar 2026, 09:30}. */
    public String show(@Nullable Instant at) {
        return at == null ? "" : SHOWN.format(at.atZone(zone));
    }

    /** To the second, where several things happened in one minute. */
    public String exact(Instant at) {
        return EXACT.format(at.atZone(zone));
    }

    public String day(@Nullable Instant at) {
        return at == null ? "" : SHOWN_DAY.format(at.atZone(zone));
    }

    /** The day alone: {@code 29 Mar 2026}. */
    public String date(Instant at) {
        return DAY.format(at.atZone(zone));
    }

    /** As an input of the type datetime-local takes it. */
    public String input(Instant at) {
        return TYPED.format(at.atZone(zone));
    }

    /**
     * What a datetime-local input sends.
     *
     * @throws Refusal INVALID where it is no time, or one that the site's clocks skip
     */
    public Typed parse(String field, String typed) {
        LocalDateTime local;
        try {
            local = LocalDateTime.parse(typed.strip());
        } catch (DateTimeParseException e) {
            throw Refusal.invalid(field, "form.time");
        }
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            throw Refusal.invalid(field, "form.time-skipped", zone.getId());
        }
        return new Typed(local.toInstant(offsets.get(0)).truncatedTo(ChronoUnit.MICROS), offsets.size() > 1);
    }
}
