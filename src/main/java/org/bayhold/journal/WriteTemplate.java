package org.bayhold.journal;

import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Function;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * The one way in which a fact is written. Every use case that writes is one READ COMMITTED transaction that first
 * updates the head row of the chain it writes to, reads only after that, and is repeated whole, in a fresh persistence
 * context, when the database says that it met another. docs/decisions/0003-the-write-template.md.
 */
@Component
public class WriteTemplate {
    private static final Logger LOG = LoggerFactory.getLogger(WriteTemplate.class);
    private static final int TRIES = 5;
    private static final long JITTER_MILLIS = 25;

    private final TransactionTemplate transaction;
    private final EntityManager entityManager;
    private final ChainHeads heads;
    private final JournalEntries entries;
    private final IdempotencyRows answers;
    private final PersonalData personalData;
    private final FollowUpRows followUps;
    private final Database database;
    private final Standing standing;
    private final CanonicalJson json;
    private final JsonMapper answerMapper;
    private final Clock clock;

    WriteTemplate(
            PlatformTransactionManager transactions,
            EntityManager entityManager,
            ChainHeads heads,
            JournalEntries entries,
            IdempotencyRows answers,
            PersonalData personalData,
            FollowUpRows followUps,
            Database database,
            Standing standing,
            CanonicalJson json,
            JsonMapper answerMapper,
            Clock clock) {
        this.transaction = new TransactionTemplate(transactions);
        this.transaction.setIsolationLevel(TransactionDefinition.ISOLATION_READ_COMMITTED);
        this.entityManager = entityManager;
        this.heads = heads;
        this.entries = entries;
        this.answers = answers;
        this.personalData = personalData;
        this.followUps = followUps;
        this.database = database;
        this.standing = standing;
        this.json = json;
        this.answerMapper = answerMapper;
        this.clock = clock;
    }

    /**
     * Writes to a chain that exists.
     *
     * @param work what is decided and appended under the lock; it may run again from the start, so it keeps nothing
     * @param type the answer's class, which must read back from the JSON it is stored as
     * @throws Refusal NOT_FOUND where there is no such chain, or whatever {@code work} refuses; then nothing has changed
     */
    public <T> Written<T> write(WriteRequest request, UUID chainId, Class<T> type, Function<OpenChain, T> work) {
        return run(request, type, () -> work(request, lock(chainId), work));
    }

    /** Begins a chain of its own; otherwise as {@link #write}. */
    public <T> Written<T> begin(
            WriteRequest request, UUID chainId, ChainKind kind, Class<T> type, Function<OpenChain, T> work) {
        return run(request, type, () -> {
            heads.save(new ChainHead(chainId, kind, Instant.EPOCH));
            return work(request, lock(chainId), work);
        });
    }

    /**
     * The answer that the same request got before; empty where it is new. For work that takes long before there is anything
     * to write.
     *
     * @throws Refusal IDEMPOTENCY_MISMATCH where its key came with another body
     */
    public <T> Optional<T> answered(WriteRequest request, Class<T> type) {
        return replay(request, type).map(Written::value);
    }

    /** Step 1, and the head as it stands under the lock. A test takes the lock out to prove that the race test notices. */
    ChainHead lock(UUID chainId) {
        if (heads.advance(chainId) == 0) {
            throw Refusal.notFound("record.not-found");
        }
        return heads.findById(chainId).orElseThrow();
    }

    private <T> T work(WriteRequest request, ChainHead head, Function<OpenChain, T> work) {
        OpenChain chain = new OpenChain(head, request, database, entries, personalData, followUps, json);
        T answer = work.apply(chain);
        heads.close(chain.chainId(), chain.lastSeq(), chain.lastHash(), chain.lastRecordedAt(), chain.openItemId());
        return answer;
    }

    private <T> Written<T> run(WriteRequest request, Class<T> type, java.util.function.Supplier<T> steps) {
        standing.mustBeIntact();
        for (int attempt = 1; ; attempt++) {
            Optional<Written<T>> earlier = replay(request, type);
            if (earlier.isPresent()) {
                return earlier.get();
            }
            try {
                return transaction.execute(status -> inOneTransaction(request, steps));
            } catch (RuntimeException failure) {
                if (!Conflicts.worthAnotherTry(failure)) {
                    return whateverBecameOf(request, type, failure);
                }
                if (attempt == TRIES) {
                    LOG.warn("a write met others {} times", TRIES, failure);
                    throw Refusal.of(Code.UNAVAILABLE, "busy");
                }
                LOG.debug("a write met another, try {}", attempt, failure);
                pause(attempt);
            }
        }
    }

    private <T> Written<T> inOneTransaction(WriteRequest request, java.util.function.Supplier<T> steps) {
        String key = request.idempotencyKey();
        if (key != null) {
            // a second copy of the same request waits here for the first one
            answers.saveAndFlush(new IdempotencyRow(
                    request.by(), key, request.fingerprint(), clock.instant().truncatedTo(ChronoUnit.MICROS)));
        }
        T answer = steps.get();
        if (key != null) {
            answers.answer(request.by(), key, answerMapper.writeValueAsString(answer));
        }
        entityManager.flush();
        return new Written<>(answer, false);
    }

    /** A lost connection leaves the outcome unknown: only the stored answer can tell. Other failures pass through. */
    private <T> Written<T> whateverBecameOf(WriteRequest request, Class<T> type, RuntimeException failure) {
        if (!Conflicts.isLostConnection(failure)) {
            throw failure;
        }
        LOG.warn("the connection was lost during a write", failure);
        try {
            return replay(request, type).orElseThrow(() -> Refusal.of(Code.UNAVAILABLE, "database.unavailable"));
        } catch (org.springframework.dao.DataAccessException | org.springframework.transaction.TransactionException e) {
            throw Refusal.of(Code.UNAVAILABLE, "database.unavailable");
        }
    }

    private <T> Optional<Written<T>> replay(WriteRequest request, Class<T> type) {
        String key = request.idempotencyKey();
        if (key == null) {
            return Optional.empty();
        }
        return answers.findById(new IdempotencyRow.Key(request.by(), key))
                .filter(row -> row.answer() != null)
                .map(row -> {
                    if (!row.fingerprint().equals(request.fingerprint())) {
                        throw Refusal.of(Code.IDEMPOTENCY_MISMATCH, "idempotency.mismatch");
                    }
                    return new Written<>(answerMapper.readValue(row.answer(), type), true);
                });
    }

    private static void pause(int attempt) {
        try {
            Thread.sleep(ThreadLocalRandom.current().nextLong(1, JITTER_MILLIS * attempt));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Refusal.of(Code.UNAVAILABLE, "busy");
        }
    }
}
