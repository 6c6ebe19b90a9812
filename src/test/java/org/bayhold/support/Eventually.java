package org.bayhold.support;

import java.time.Duration;
import java.time.Instant;

/** Patience with what the server does after it has answered. */
public final class Eventually {
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private Eventually() {}

    /** Asks again until {@code expectation} holds; fails as it fails when patience ends. */
    public static void holds(Runnable expectation) {
        Instant end = Instant.now().plus(PATIENCE);
        while (true) {
            try {
                expectation.run();
                return;
            } catch (AssertionError e) {
                if (Instant.now().isAfter(end)) {
                    throw e;
                }
                pause(Duration.ofMillis(50));
            }
        }
    }

    static void pause(Duration duration) {
        try {
            Thread.sleep(duration.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
