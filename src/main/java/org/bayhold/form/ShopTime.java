package org.bayhold.form;

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
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Times as people type and read them: in the shop's own zone, to the minute. Stored are instants. */
@Component("shopTime")
public class ShopTime {
    private static final DateTimeFormatter READ = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter EXACT = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm:ss", Locale.ENGLISH);
    private static final DateTimeFormatter TYPED = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm", Locale.ENGLISH);

    private final ZoneId zone;

    /** @param zone left out, the server's */
    ShopTime(@Value("${bayhold.zone:}") String zone) {
        this.zone = zone.isBlank() ? ZoneId.systemDefault() : ZoneId.of(zone);
    }

    public String read(@Nullable Instant time) {
        return time == null ? "" : READ.format(time.atZone(zone));
    }

    public String exact(Instant time) {
        return EXACT.format(time.atZone(zone));
    }

    /** As a field for a date and a time holds it. */
    public String typed(@Nullable Instant time) {
        return time == null ? "" : TYPED.format(time.atZone(zone));
    }

    /**
     * The time that was typed.
     *
     * @throws Refusal INVALID where it is no time, or the clocks skipped it or went through it twice
     */
    Instant of(String field, String typed) {
        LocalDateTime local;
        try {
            local = LocalDateTime.parse(typed.strip().replace(' ', 'T')).truncatedTo(ChronoUnit.MINUTES);
        } catch (DateTimeParseException e) {
            throw Refusal.invalid(field, "form.not-a-time");
        }
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.size() != 1) {
            throw Refusal.invalid(field, offsets.isEmpty() ? "form.time-skipped" : "form.time-twice");
        }
        return local.toInstant(offsets.get(0));
    }
}
