package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * After the tests of a class, whatever they recorded, the record is intact: a write that a verification does not
 * understand would keep the next start from serving.
 */
public final class TheRecordStaysIntact implements AfterAllCallback {
    @Override
    public void afterAll(ExtensionContext context) {
        boolean h2 = OnH2.class.isAssignableFrom(context.getRequiredTestClass());
        Shop shop = (h2 ? RunningBayhold.onH2() : RunningBayhold.onPostgres()).shop();

        Answer verification = shop.as(Role.AUDITOR).get("/journal/verification").is(200);

        assertThat(verification.json().path("intact").asBoolean())
                .as(verification.text())
                .isTrue();
    }
}
