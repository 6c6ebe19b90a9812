package org.bayhold.identity;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * The way in for the very first user: a link with a random token, printed to the log of a server that starts without any
 * user. Whoever reads the log may set the shop up; nobody else. It leads nowhere once there is a user, or after a restart.
 */
@Component
class SetUp {
    private static final Logger LOG = LoggerFactory.getLogger(SetUp.class);
    private static final int BYTES = 32;

    private final People people;
    private volatile @Nullable String token;

    SetUp(People people) {
        this.people = people;
    }

    @EventListener
    void started(ApplicationReadyEvent event) {
        if (people.isEmpty()) {
            byte[] secret = new byte[BYTES];
            new SecureRandom().nextBytes(secret);
            String text = Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
            token = text;
            LOG.warn(
                    "There is no user yet. Make the first administrator, once, at this server's address: /set-up/{}",
                    text);
        }
    }

    boolean isOpenTo(String shown) {
        String wanted = token;
        return wanted != null && same(wanted, shown) && people.isEmpty();
    }

    void makeAdministrator(String shown, String username, String password) {
        if (isOpenTo(shown)) {
            People.Person ignored = people.addFirst(username, password);
            token = null;
        }
    }

    private static boolean same(String wanted, String shown) {
        return MessageDigest.isEqual(wanted.getBytes(StandardCharsets.UTF_8), shown.getBytes(StandardCharsets.UTF_8));
    }
}
