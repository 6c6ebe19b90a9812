package org.bayhold.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletRequest;

/** What is remembered of a form so that a second click is known to be the first. */
class CallResolverTest {
    @Test
    void noPasswordIsRememberedNotEvenAsAHash() {
        for (String secret : new String[] {"password", "secondPassword", "newPassword", "passwordAgain"}) {
            assertThat(CallResolver.fingerprint(sent(secret, "one lamp over the bench")))
                    .as(secret)
                    .isEqualTo(CallResolver.fingerprint(sent(secret, "another lamp entirely")));
        }
    }

    @Test
    void anythingElseTellsTwoFormsApart() {
        assertThat(CallResolver.fingerprint(sent("note", "one")))
                .isNotEqualTo(CallResolver.fingerprint(sent("note", "another")));
        assertThat(CallResolver.fingerprint(sent("_csrf", "one")))
                .isEqualTo(CallResolver.fingerprint(sent("_csrf", "another")));
    }

    private static MockHttpServletRequest sent(String field, String value) {
        MockHttpServletRequest request = new MockHttpServletRequest("POST", "/password");
        request.addParameter("username", "writer");
        request.addParameter(field, value);
        return request;
    }
}
