package org.bayhold.demo;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.Map;
import org.bayhold.identity.People;
import org.bayhold.identity.Role;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** One user for each role, all with the same password. */
@Component
@Profile("demo")
@Order(1)
class DemoUsers implements ApplicationRunner {
    private static final Logger LOG = LoggerFactory.getLogger(DemoUsers.class);
    private static final int PASSWORD_BYTES = 12;

    static final Map<String, Role> USERS = Map.of(
            "writer", Role.WRITER,
            "tech", Role.TECHNICIAN,
            "calibrator", Role.CALIBRATOR,
            "manager", Role.MANAGER,
            "auditor", Role.AUDITOR,
            "admin", Role.ADMINISTRATOR);

    private final DemoSettings settings;
    private final People people;
    private final String password;

    DemoUsers(DemoSettings settings, People people) {
        this.settings = settings;
        this.people = people;
        this.password = isGiven(settings) ? String.valueOf(settings.password()) : random();
    }

    String password() {
        return password;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        people.ensure(USERS, password);
        if (!isGiven(settings)) {
            LOG.info("Demo users writer, tech, calibrator, manager, auditor, admin; password: {}", password);
        }
    }

    private static boolean isGiven(DemoSettings settings) {
        return settings.password() != null && !settings.password().isBlank();
    }

    private static String random() {
        byte[] bytes = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
