package org.bayhold.identity;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Hashing;
import org.bayhold.journal.Ids;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Access tokens of the API: made, shown, listed, taken back. */
@Component
public class AccessTokens {
    static final String PREFIX = "bay_";
    private static final Duration LIFETIME = Duration.ofDays(30);
    private static final int BYTES = 32;

    private final SecureRandom random = new SecureRandom();
    private final Tokens tokens;
    private final Users users;
    private final WriteTemplate writes;
    private final IdentitySettings settings;
    private final Clock clock;

    AccessTokens(Tokens tokens, Users users, WriteTemplate writes, IdentitySettings settings, Clock clock) {
        this.tokens = tokens;
        this.users = users;
        this.writes = writes;
        this.settings = settings;
        this.clock = clock;
    }

    /** A new token; the only time that its text is to be seen. */
    public record NewToken(UUID id, String token, Instant expiresAt) {}

    /** A token as listed: everything but its text. */
    public record TokenView(
            UUID id,
            String label,
            boolean signs,
            Instant createdAt,
            Instant expiresAt,
            @Nullable Instant revokedAt) {}

    record TokenMade(UUID id, UUID userId, boolean signs, Instant expiresAt) {}

    record TokenRevoked(UUID tokenId) {}

    /** @param signs null takes the default: in the demo, calibrators and managers sign; elsewhere nobody does unasked */
    public NewToken make(Caller caller, String label, @Nullable Boolean signs) {
        byte[] secret = new byte[BYTES];
        random.nextBytes(secret);
        String token = PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        boolean maySign = signs != null ? signs : settings.signByDefault() && caller.may(Act.CLEAR_RETUNE);
        UUID id = Ids.next();
        UserRow user = users.findById(caller.userId()).orElseThrow();
        Call call = new Call(caller, null, "");
        return writes.write(call.request(), Chains.IDENTITY, NewToken.class, chain -> {
                    Instant now = chain.recordedAt();
                    Instant expiresAt = now.plus(LIFETIME);
                    tokens.save(new TokenRow(id, user, hash(token), label, maySign, now, expiresAt));
                    chain.append("TOKEN_MADE", id, now, new TokenMade(id, caller.userId(), maySign, expiresAt));
                    return new NewToken(id, token, expiresAt);
                })
                .value();
    }

    /** Who shows this token, while it works. */
    @Transactional(readOnly = true)
    public Optional<Caller> callerOf(String token) {
        return tokens.byHash(hash(token))
                .filter(row -> row.worksAt(clock.instant()))
                .map(row -> new Caller(
                        row.user().getId(),
                        row.user().username(),
                        row.user().roles(),
                        row.getId(),
                        row.signs(),
                        Units.METRIC));
    }

    @Transactional(readOnly = true)
    public List<TokenView> of(Caller caller) {
        return tokens.ofUser(caller.userId()).stream()
                .map(row -> new TokenView(
                        row.getId(), row.label(), row.signs(), row.createdAt(), row.expiresAt(), row.revokedAt()))
                .toList();
    }

    /** Takes an own token back; at once, on every server. */
    public void revoke(Caller caller, UUID tokenId) {
        Call call = new Call(caller, null, "");
        TokenRevoked ignored = writes.write(call.request(), Chains.IDENTITY, TokenRevoked.class, chain -> {
                    if (tokens.revoke(tokenId, caller.userId(), chain.recordedAt()) == 0) {
                        throw Refusal.notFound("token.not-found");
                    }
                    TokenRevoked revoked = new TokenRevoked(tokenId);
                    chain.append("TOKEN_REVOKED", Ids.next(), chain.recordedAt(), revoked);
                    return revoked;
                })
                .value();
    }

    private static String hash(String token) {
        return Hashing.sha256(token.getBytes(StandardCharsets.UTF_8));
    }
}
