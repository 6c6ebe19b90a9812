package org.bayhold.identity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.bayhold.refusal.Refusal;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;

/**
 * What a password must be where it is the only factor: long, and none that everybody tries. No rules of composition, and
 * nothing is cut off (NIST SP 800-63B-4, 3.1.1.2).
 */
@Component
class PasswordRule {
    private static final int SHORTEST = 15;
    private static final int LONGEST = 128;

    private final Set<String> common;

    PasswordRule() {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                new ClassPathResource("common-passwords.txt").getInputStream(), StandardCharsets.UTF_8))) {
            this.common = lines.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(PasswordRule::bare)
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @throws Refusal INVALID, for the field {@code password} */
    void check(String password, String username) {
        int length = password.codePointCount(0, password.length());
        if (length < SHORTEST || length > LONGEST) {
            throw Refusal.invalid("password", "password.length", SHORTEST, LONGEST);
        }
        String bare = bare(password);
        if (common.contains(bare) || isOneThingAgainAndAgain(bare) || isOneThingAgainAndAgain(bare, bare(username))) {
            throw Refusal.invalid("password", "password.common");
        }
    }

    private static boolean isOneThingAgainAndAgain(String password) {
        for (int length = 1; length <= password.length() / 3; length++) {
            if (isOneThingAgainAndAgain(password, password.substring(0, length))) {
                return true;
            }
        }
        return password.isEmpty();
    }

    private static boolean isOneThingAgainAndAgain(String password, String thing) {
        return !thing.isEmpty()
                && thing.repeat(password.length() / thing.length() + 1).startsWith(password);
    }

    /** "Correct Horse-Battery" and "correcthorsebattery" are one. */
    private static String bare(String password) {
        return password.toLowerCase(Locale.ROOT).replaceAll("[\\s_.-]", "");
    }
}
