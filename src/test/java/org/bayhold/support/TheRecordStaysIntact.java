package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * When all tests of a database have run, whatever they recorded, the record is intact: a write that a verification does
 * not understand would keep the next start from serving.
 */
public final class TheRecordStaysIntact implements AfterAllCallback {
    private static final ExtensionContext.Namespace HERE =
            ExtensionContext.Namespace.create(TheRecordStaysIntact.class);

    @Override
    public void afterAll(ExtensionContext context) {
        boolean h2 = OnH2.class.isAssignableFrom(context.getRequiredTestClass());
        context.getRoot().getStore(HERE).computeIfAbsent(h2, key -> new AtTheEnd(h2), AtTheEnd.class);
    }

    /** One of them for each database: a record takes the longer to verify the more tests have written it. */
    private record AtTheEnd(boolean h2) implements AutoCloseable {
        @Override
        public void close() {
            Shop shop = (h2 ? RunningBayhold.onH2() : RunningBayhold.onPostgres()).shop();

            Answer verification =
                    shop.as(Role.AUDITOR).get("/journal/verification").is(200);

            assertThat(verification.json().path("intact").asBoolean())
                    .as(verification.text())
                    .isTrue();
        }
    }
}
