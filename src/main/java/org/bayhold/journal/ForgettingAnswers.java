package org.bayhold.journal;

import java.time.Clock;
import java.time.Duration;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Keys of requests, and the answers kept under them, are good for a day. */
@Component
class ForgettingAnswers {
    private static final Duration KEPT = Duration.ofHours(24);

    private final IdempotencyRows answers;
    private final Clock clock;

    ForgettingAnswers(IdempotencyRows answers, Clock clock) {
        this.answers = answers;
        this.clock = clock;
    }

    @Scheduled(fixedDelayString = "PT1H", initialDelayString = "PT1M")
    @Transactional
    void forget() {
        int ignored = answers.forgetBefore(clock.instant().minus(KEPT));
    }
}
