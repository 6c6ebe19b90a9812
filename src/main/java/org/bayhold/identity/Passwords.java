package org.bayhold.identity;

import java.util.Map;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/** How passwords are hashed: Argon2id with the parameters of the OWASP Password Storage Cheat Sheet (19 MiB, 2 passes). */
@Configuration(proxyBeanMethods = false)
class Passwords {
    private static final int SALT_BYTES = 16;
    private static final int HASH_BYTES = 32;
    private static final int LANES = 1;
    private static final int KIBIBYTES = 19_456;
    private static final int PASSES = 2;

    @Bean
    PasswordEncoder passwordEncoder() {
        PasswordEncoder argon2 = new Argon2PasswordEncoder(SALT_BYTES, HASH_BYTES, LANES, KIBIBYTES, PASSES);
        return new AtMostTwoAtOnce(new DelegatingPasswordEncoder("argon2", Map.of("argon2", argon2)));
    }

    /** Hashing is made to be dear: two at once leave the rest of the server its processors and memory. */
    private static final class AtMostTwoAtOnce implements PasswordEncoder {
        private final Semaphore seats = new Semaphore(2, true);
        private final PasswordEncoder encoder;

        AtMostTwoAtOnce(PasswordEncoder encoder) {
            this.encoder = encoder;
        }

        @Override
        public @Nullable String encode(@Nullable CharSequence rawPassword) {
            seats.acquireUninterruptibly();
            try {
                return encoder.encode(rawPassword);
            } finally {
                seats.release();
            }
        }

        @Override
        public boolean matches(@Nullable CharSequence rawPassword, @Nullable String encodedPassword) {
            seats.acquireUninterruptibly();
            try {
                return encoder.matches(rawPassword, encodedPassword);
            } finally {
                seats.release();
            }
        }
    }
}
