package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.OnADatabase;
import org.junit.jupiter.api.Test;

/** Guessing a password is slowed down for a name, and other names are left alone. */
public abstract class Guessing implements OnADatabase {

    @Test
    void afterAFewWrongPasswordsTheNameHasToWait() {
        List<Integer> statuses = new ArrayList<>();
        Answer last = null;
        for (int i = 0; i < 8; i++) {
            last = shop().guesses("nobody-of-the-shop", "wrong " + i);
            statuses.add(last.status());
        }

        assertThat(statuses.subList(0, 5)).containsOnly(401);
        assertThat(statuses).contains(429);
        Answer refused = shop().guesses("nobody-of-the-shop", "wrong again");
        if (refused.status() == 429) {
            refused.isProblem(429, "too-many-requests");
            assertThat(refused.header("Retry-After")).isNotEmpty();
        }
        assertThat(shop().guesses("another-nobody", "wrong").status()).isEqualTo(401);
    }
}
