package org.bayhold.identity;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.bayhold.journal.Hashing;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Slows guessing down: after a few failures in a row each further one doubles the wait, up to a quarter of an hour, for
 * the name and for the address alike. Counted in the database, so that every server of the shop counts together, and
 * asked before a password is hashed, because hashing is dear.
 */
@Component
class SignInThrottle {
    private static final int FREE_FAILURES_OF_A_NAME = 5;
    /** Many people may sit behind one address. */
    private static final int FREE_FAILURES_OF_AN_ADDRESS = 50;

    private static final Duration LONGEST_WAIT = Duration.ofMinutes(15);
    private static final int LONGEST_DOUBLING = 10;
    private static final Duration FORGOTTEN_AFTER = Duration.ofHours(1);

    private final SignInFailures failures;
    private final Clock clock;

    SignInThrottle(SignInFailures failures, Clock clock) {
        this.failures = failures;
        this.clock = clock;
    }

    /** How long to wait before the next try; zero for none. */
    @Transactional(readOnly = true)
    public Duration waitOf(String name, String address) {
        Instant now = clock.instant();
        return failures.findAllById(subjects(name, address)).stream()
                .map(row -> Duration.between(now, row.blockedTo()))
                .filter(wait -> !wait.isNegative())
                .max(Duration::compareTo)
                .orElse(Duration.ZERO);
    }

    @Transactional
    public void failed(String name, String address) {
        count(nameSubject(name), FREE_FAILURES_OF_A_NAME);
        count(addressSubject(address), FREE_FAILURES_OF_AN_ADDRESS);
    }

    @Transactional
    public void succeeded(String name, String address) {
        int ignored = failures.forget(subjects(name, address));
    }

    /** Whoever stopped trying starts anew. */
    @Scheduled(fixedDelayString = "PT10M", initialDelayString = "PT10M")
    @Transactional
    public void forget() {
        int ignored = failures.forgetBefore(clock.instant().minus(FORGOTTEN_AFTER));
    }

    private void count(String subject, int free) {
        int before = failures.findById(subject).map(SignInFailureRow::failures).orElse(0);
        int doublings = Math.min(before + 1 - free, LONGEST_DOUBLING);
        Duration wait = doublings <= 0 ? Duration.ZERO : Duration.ofSeconds(1L << (doublings - 1));
        Instant until = clock.instant()
                .plus(wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait)
                .truncatedTo(ChronoUnit.MICROS);
        failures.save(new SignInFailureRow(subject, before + 1, until));
    }

    private static List<String> subjects(String name, String address) {
        return List.of(nameSubject(name), addressSubject(address));
    }

    private static String nameSubject(String name) {
        return Hashing.sha256("name " + name.toLowerCase(Locale.ROOT));
    }

    private static String addressSubject(String address) {
        return Hashing.sha256("address " + address);
    }
}
