package org.bayhold.web;

import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.page.SiteTime;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** What every template may ask, as {@code @ui}. */
@Component("ui")
class Ui {
    private final SiteTime time;
    private final MessageSource messages;

    Ui(SiteTime time, MessageSource messages) {
        this.time = time;
        this.messages = messages;
    }

    /** Whoever is signed in, or null. */
    public @Nullable Caller caller() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication != null && authentication.getPrincipal() instanceof Caller caller ? caller : null;
    }

    public boolean may(String act) {
        Caller caller = caller();
        return caller != null && caller.may(Act.valueOf(act));
    }

    /** A new key for a form, by which a second click is known to be the same. */
    public String once() {
        return UUID.randomUUID().toString();
    }

    /** The units in which whoever is signed in reads. */
    public Units units() {
        Caller caller = caller();
        return caller == null ? Units.METRIC : caller.units();
    }

    /** A figure of SI with its unit, as whoever is signed in reads it; {@code decimals} are those in SI. */
    public String amount(@Nullable Number figure, String unit, int decimals) {
        return figure == null ? "" : units().show(figure.doubleValue(), unit, decimals);
    }

    public String time(@Nullable Instant at) {
        return time.show(at);
    }

    public String exact(Instant at) {
        return time.exact(at);
    }

    public String date(Instant at) {
        return time.date(at);
    }

    public String day(@Nullable Instant at) {
        return time.day(at);
    }

    public String zone() {
        return time.zone().getId();
    }

    /** The label of a constant: {@code category.INJECTORS}; the code itself where it has none. */
    public String label(String kind, @Nullable Object code) {
        return code == null
                ? ""
                : Objects.requireNonNull(
                        messages.getMessage(kind + "." + code, null, String.valueOf(code), Locale.ENGLISH));
    }
}
