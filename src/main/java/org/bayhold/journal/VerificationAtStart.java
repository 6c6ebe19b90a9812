package org.bayhold.journal;

import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;

/** Verifies the record at every start, before the server takes its first request. There is no way round it. */
@Component
@Lazy(false)
class VerificationAtStart implements SmartInitializingSingleton {
    private static final Logger LOG = LoggerFactory.getLogger(VerificationAtStart.class);

    private final Verification verification;
    private final Standing standing;

    VerificationAtStart(Verification verification, Standing standing) {
        this.verification = verification;
        this.standing = standing;
    }

    @Override
    public void afterSingletonsInstantiated() {
        long start = System.nanoTime();
        Verdict verdict = verification.verify();
        long millis = Duration.ofNanos(System.nanoTime() - start).toMillis();
        BrokenEntry first = verdict.firstBroken();
        if (first == null) {
            LOG.info("The record is intact: {} entries verified in {} ms", verdict.entries(), millis);
        } else {
            standing.isBroken(first);
            LOG.error(
                    "THE RECORD IS BROKEN, and nothing is served of it. After {} entries in order, chain {}, entry {}"
                            + " (record {}): {}. docs/operations.md, \"When the record is broken\".",
                    verdict.entries(),
                    first.chainId(),
                    first.seq(),
                    first.recordId(),
                    first.what());
        }
    }
}
